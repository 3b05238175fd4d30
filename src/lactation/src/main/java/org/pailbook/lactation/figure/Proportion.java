package org.pailbook.lactation.figure;

/**
 * So many of so many: 3 of 7 cows. With the interval in which the share of a very large herd of the same kind would be expected.
 *
 * @param count those that have it
 * @param outOf all of which it could be said
 * @see "Wilson, E. B. (1927), probable inference, the law of succession, and statistical inference (from memory)"
 */
public record Proportion(int count, int outOf) {
    /** Of fewer, the count is shown before the percentage and neither is called good or bad; ours. */
    public static final int FEW = 10;

    private static final double COVERAGE = 0.95;
    private static final double Z = 1.959964;

    public Proportion {
        if (count < 0 || outOf < count) {
            throw new IllegalArgumentException("count (" + count + ") must be 0 to outOf (" + outOf + ")");
        }
    }

    /** 0 to 1. @throws IllegalStateException if there is nothing to count */
    public double share() {
        if (outOf == 0) {
            throw new IllegalStateException("0 of 0 has no share");
        }
        return (double) count / outOf;
    }

    /** Wilson's 95 % interval of the share, 0 to 1. */
    public Interval wilson95() {
        double p = share();
        double zz = Z * Z / outOf;
        double middle = (p + zz / 2) / (1 + zz);
        double half = Z / (1 + zz) * Math.sqrt(p * (1 - p) / outOf + zz / (4 * outOf));
        // at 0 and at all the ends are exact, and rounding must not carry them outside
        double low = count == 0 ? 0 : Math.max(0, middle - half);
        double high = count == outOf ? 1 : Math.min(1, middle + half);
        return new Interval(COVERAGE, low, high);
    }

    public boolean isFew() {
        return outOf < FEW;
    }

    /** {@code 3 of 7}. */
    public String text() {
        return count + " of " + outOf;
    }
}
