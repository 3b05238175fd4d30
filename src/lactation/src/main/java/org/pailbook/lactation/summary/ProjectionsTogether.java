package org.pailbook.lactation.summary;

/**
 * How wrong the sum of many cows' projections can be. What is unsure about a cow alone averages out over the herd; what is unsure about the
 * level of the herd, and so the same for all, does not: {@code sqrt(sum (SEP^2 - s^2) + (sum s)^2)}, {@code s} a cow's share in it.
 *
 * @param ownVarianceKg2 sum of the variances that are each cow's own, kg squared
 * @param sharedErrorKg sum of the shares in the unsure level of the herd, kg
 * @see "variance of a sum of errors with one common part; any textbook of statistics"
 */
record ProjectionsTogether(double ownVarianceKg2, double sharedErrorKg) {

    static ProjectionsTogether none() {
        return new ProjectionsTogether(0, 0);
    }

    /**
     * One cow more.
     *
     * @param standardErrorKg of her projection, the unsure level of the herd included
     * @param sharedKg the part of it that is due to the level of the herd
     */
    ProjectionsTogether with(double standardErrorKg, double sharedKg) {
        double own = Math.max(0, standardErrorKg * standardErrorKg - sharedKg * sharedKg);
        return new ProjectionsTogether(ownVarianceKg2 + own, sharedErrorKg + sharedKg);
    }

    double standardErrorOfSumKg() {
        return Math.sqrt(ownVarianceKg2 + sharedErrorKg * sharedErrorKg);
    }
}
