package org.pailbook.lactation.culling;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * How much a cow milks against her group (first or later lactations): projected 305-day milk over the group's mean projection.
 *
 * @param ratio 1 is the mean
 * @param standardError of the ratio, if known
 * @param testDays it rests on
 */
public record MilkLevel(double ratio, OptionalDouble standardError, int testDays) {
    /** Nothing is known: the mean stands in. */
    public static final MilkLevel NOT_KNOWN = new MilkLevel(1, OptionalDouble.empty(), 0);

    public MilkLevel {
        Objects.requireNonNull(standardError, "standardError");
        if (!(ratio >= 0 && ratio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("ratio (" + ratio + ") must be 0 or more");
        }
        if (!(standardError.orElse(0) >= 0 && standardError.orElse(0) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("standardError (" + standardError + ") must be 0 or more");
        }
        if (testDays < 0) {
            throw new IllegalArgumentException("testDays (" + testDays + ") must be 0 or more");
        }
    }

    /**
     * @param projectedKg 305-day milk of the cow
     * @param groupMeanKg mean of her group, above 0
     * @param standardErrorKg of the projection
     */
    public static MilkLevel ofProjection(
            double projectedKg, double groupMeanKg, OptionalDouble standardErrorKg, int testDays) {
        if (!(groupMeanKg > 0)) {
            throw new IllegalArgumentException("groupMeanKg (" + groupMeanKg + ") must be above 0");
        }
        return new MilkLevel(
                Math.max(0, projectedKg) / groupMeanKg,
                standardErrorKg.isPresent()
                        ? OptionalDouble.of(standardErrorKg.getAsDouble() / groupMeanKg)
                        : OptionalDouble.empty(),
                testDays);
    }

    /**
     * Moved towards the mean as far as it is unsure. For levels measured plainly; a best prediction is moved already.
     *
     * @param reliabilityShare 0 to 1
     */
    public MilkLevel shrunk(double reliabilityShare) {
        Shares.require("reliabilityShare", reliabilityShare);
        return new MilkLevel(1 + reliabilityShare * (ratio - 1), standardError, testDays);
    }
}
