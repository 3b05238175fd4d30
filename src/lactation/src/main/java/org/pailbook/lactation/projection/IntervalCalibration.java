package org.pailbook.lactation.projection;

import java.util.Arrays;

/**
 * How far an interval reaches to either side of the projection, learned from projections whose truth is now known.
 *
 * <p>The standard error a model gives is a little too small while tests are few, because its means and spreads are themselves estimates. A
 * factor for each number of tests mends that: {@code sqrt(mean(error^2 / SEP^2))} over completed lactations.
 */
public final class IntervalCalibration {
    /** The interval as the model gives it. */
    public static final IntervalCalibration NONE = new IntervalCalibration(new double[] {1});

    private final double[] factors;

    private IntervalCalibration(double[] factors) {
        this.factors = factors;
    }

    /**
     * @param factors index is the number of tests, from no test on; the last holds for more; each above 0
     */
    public static IntervalCalibration ofFactors(double... factors) {
        if (factors.length == 0 || !Arrays.stream(factors).allMatch(factor -> factor > 0 && factor < 100)) {
            throw new IllegalArgumentException("factors (" + Arrays.toString(factors) + ") must be above 0");
        }
        return new IntervalCalibration(factors.clone());
    }

    /** What the standard error is multiplied with after so many tests. */
    public double factor(int tests) {
        return factors[Math.min(tests, factors.length - 1)];
    }
}
