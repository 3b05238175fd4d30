package org.pailbook.lactation.reference;

import java.util.Arrays;

/**
 * How unsure a mean curve itself is: it may lie higher or lower, rise or fall faster, by a few shapes with a covariance.
 *
 * <p>The error of the mean on day t is {@code sum_k b_k x_k(t)}, the b with covariance C. Shapes by day: 1; {@code exp(-0.05 t)}; {@code (t - 153) / 152};
 * the square of the third. After day 305 they stay as on day 305. All lactations projected from one standard share this error. Unit: that
 * of the yield, per day. Immutable.
 */
public final class MeanUncertainty {
    /** Number of shapes. */
    public static final int SHAPES = 4;

    private static final int LAST_SHAPED_DAY = 305;
    private static final double[][] SHAPE = new double[SHAPES][DailySpread.LAST_DAY + 1];
    private static final double[][] SHAPE_TOTAL = new double[SHAPES][DailySpread.LAST_DAY + 1];

    static {
        for (int day = 1; day <= DailySpread.LAST_DAY; day++) {
            double t = Math.min(day, LAST_SHAPED_DAY);
            double late = (t - 153) / 152;
            double[] values = {1, Math.exp(-0.05 * t), late, late * late};
            for (int k = 0; k < SHAPES; k++) {
                SHAPE[k][day] = values[k];
                SHAPE_TOTAL[k][day] = SHAPE_TOTAL[k][day - 1] + values[k];
            }
        }
    }

    private final double[] covariance;

    private MeanUncertainty(double[] covariance) {
        this.covariance = covariance;
    }

    /** @param covariance of the coefficients, {@link #SHAPES} rows of as many columns, symmetric, no variance below 0 */
    public static MeanUncertainty of(double[][] covariance) {
        double[] flat = new double[SHAPES * SHAPES];
        for (int i = 0; i < SHAPES; i++) {
            for (int j = 0; j < SHAPES; j++) {
                double value = covariance[i][j];
                if (!Double.isFinite(value) || covariance[i][i] < 0) {
                    throw new IllegalArgumentException("covariance must be finite with variances of 0 or more: "
                            + Arrays.deepToString(covariance));
                }
                flat[i * SHAPES + j] = value;
            }
        }
        return new MeanUncertainty(flat);
    }

    /** Value of shape {@code k} on a day. */
    public static double shape(int k, int day) {
        return SHAPE[k][day];
    }

    /** Sum of shape {@code k} over days 1 to {@code toDay}. */
    public static double shapeTotal(int k, int toDay) {
        return SHAPE_TOTAL[k][toDay];
    }

    /** Covariance of the errors of two combinations of shapes, {@code left' C right}. */
    public double between(double[] left, double[] right) {
        double sum = 0;
        for (int i = 0; i < SHAPES; i++) {
            double row = 0;
            for (int j = 0; j < SHAPES; j++) {
                row += covariance[i * SHAPES + j] * right[j];
            }
            sum += left[i] * row;
        }
        return sum;
    }

    /** {@code C right}: with it a covariance is one short sum, {@code left' (C right)}. */
    public double[] times(double[] right) {
        double[] product = new double[SHAPES];
        for (int i = 0; i < SHAPES; i++) {
            for (int j = 0; j < SHAPES; j++) {
                product[i] += covariance[i * SHAPES + j] * right[j];
            }
        }
        return product;
    }

    /** The shapes of one day. */
    public static double[] ofDay(int day) {
        return new double[] {SHAPE[0][day], SHAPE[1][day], SHAPE[2][day], SHAPE[3][day]};
    }

    /** The shapes summed over days 1 to {@code toDay}. */
    public static double[] ofTotal(int toDay) {
        return new double[] {SHAPE_TOTAL[0][toDay], SHAPE_TOTAL[1][toDay], SHAPE_TOTAL[2][toDay], SHAPE_TOTAL[3][toDay]
        };
    }
}
