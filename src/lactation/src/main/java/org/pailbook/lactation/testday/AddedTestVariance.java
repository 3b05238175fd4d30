package org.pailbook.lactation.testday;

import java.util.OptionalDouble;

/**
 * How much more a test day varies when only a part of the day's milkings was weighed, as a share of the variance of daily milk. To be added
 * for that test wherever tests are weighted by their error.
 *
 * <p>Set so that best prediction reproduces the published squared correlations of monthly plans; the bimonthly ones, not used for that,
 * come out within 0.012. Derived, not printed in the source.
 *
 * @see "VanRaden, P. M. USDA-ARS reference note Data collection rating, table 1 (read)"
 */
public final class AddedTestVariance {
    private static final double TWO_OF_THREE = 0.17;
    private static final double ONE_OF_TWO = 0.30;
    private static final double ONE_OF_THREE = 0.56;

    private AddedTestVariance() {}

    /**
     * @return 0 for a whole day; empty for a plan that is not in the source
     * @throws IllegalArgumentException unless {@code 1 <= weighed <= perDay}
     */
    public static OptionalDouble share(int weighed, int perDay) {
        if (weighed < 1 || weighed > perDay) {
            throw new IllegalArgumentException(
                    "weighed (" + weighed + ") must be at least 1 and at most perDay (" + perDay + ")");
        }
        if (weighed == perDay) {
            return OptionalDouble.of(0);
        }
        if (perDay == 2) {
            return OptionalDouble.of(ONE_OF_TWO);
        }
        return perDay == 3 ? OptionalDouble.of(weighed == 2 ? TWO_OF_THREE : ONE_OF_THREE) : OptionalDouble.empty();
    }
}
