package org.pailbook.lactation.projection;

/**
 * How many milkings of a test day were weighed; a day told from a part of its milkings is less sure.
 *
 * <p>The extra variance is a share of the day's variance. It was derived from the squared correlations published for monthly plans
 * (.96 with all milkings, .93, .91 and .87 with a part); the bimonthly ones, not used for that, come out within .012.
 *
 * @see "VanRaden, P. M., reference note Data Collection Rating, USDA-ARS, Table 1 (read)"
 */
public enum MilkingsWeighed {
    ALL(0),
    TWO_OF_THREE(0.17),
    ONE_OF_TWO(0.30),
    ONE_OF_THREE(0.56);

    private final double extraVarianceShare;

    MilkingsWeighed(double extraVarianceShare) {
        this.extraVarianceShare = extraVarianceShare;
    }

    /** Extra variance of such a test as a share of the variance of a day's milk. */
    public double extraVarianceShare() {
        return extraVarianceShare;
    }
}
