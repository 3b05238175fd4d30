package org.pailbook.lactation.culling;

/**
 * What a chronic condition of a cow costs, as somebody who knows her entered it; never estimated here.
 *
 * @param extraCostCuPerMonth beside the usual costs, as long as she stays
 * @param unplannedExitFactor her chance to leave unplanned over that of a healthy cow; 1 or more
 */
public record HealthBurden(double extraCostCuPerMonth, double unplannedExitFactor) {
    public static final HealthBurden NONE = new HealthBurden(0, 1);

    public HealthBurden {
        if (!(extraCostCuPerMonth >= 0 && extraCostCuPerMonth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("extraCostCuPerMonth (" + extraCostCuPerMonth + ") must be 0 or more");
        }
        if (!(unplannedExitFactor >= 1 && unplannedExitFactor < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("unplannedExitFactor (" + unplannedExitFactor + ") must be 1 or more");
        }
    }
}
