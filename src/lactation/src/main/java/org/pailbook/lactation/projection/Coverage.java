package org.pailbook.lactation.projection;

/** How often an interval is meant to hold the truth. */
public enum Coverage {
    EIGHTY_PERCENT(0.80, 1.2815515655446004),
    NINETY_FIVE_PERCENT(0.95, 1.959963984540054);

    private final double share;
    private final double normalMultiple;

    Coverage(double share, double normalMultiple) {
        this.share = share;
        this.normalMultiple = normalMultiple;
    }

    /** 0.80 or 0.95. */
    public double share() {
        return share;
    }

    /** Standard deviations to either side in a normal distribution. */
    public double normalMultiple() {
        return normalMultiple;
    }
}
