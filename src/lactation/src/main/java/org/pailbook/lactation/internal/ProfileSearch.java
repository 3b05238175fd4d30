package org.pailbook.lactation.internal;

import java.util.OptionalDouble;

/**
 * Least squares over the one coefficient that is left when, for each value of it, all others can be solved for: the profile of
 * the sum of squares. It is looked at on a grid even in logarithms first, so that a profile that only falls towards one end is
 * seen as such and not taken for a fit.
 */
public final class ProfileSearch {
    private ProfileSearch() {}

    /** The sum of squares over one coefficient, all others at their best. */
    public interface Profile {
        /** Least sum of squares at that value of the coefficient; not finite where the others have no solution. */
        double rss(double coefficient);

        /**
         * Derivative of {@link #rss} there. With the others at their best it is the partial derivative alone, as if they did not
         * move.
         */
        double slope(double coefficient);
    }

    /**
     * @param low least value looked at, above 0
     * @param high greatest value looked at
     * @param points of the grid, ends included
     * @return the coefficient with the smallest sum of squares; empty if the smallest lies at an end of the range
     */
    public static OptionalDouble innerMinimum(double low, double high, int points, Profile profile) {
        double logLow = Math.log(low);
        double logStep = (Math.log(high) - logLow) / (points - 1);
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points; i++) {
            double rss = profile.rss(Math.exp(logLow + i * logStep));
            if (rss < least) {
                least = rss;
                best = i;
            }
        }
        if (best <= 0 || best == points - 1) {
            return OptionalDouble.empty();
        }
        double left = Math.exp(logLow + (best - 1) * logStep);
        double right = Math.exp(logLow + (best + 1) * logStep);
        return RootSearch.between(left, right, profile::slope);
    }
}
