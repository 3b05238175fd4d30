package org.pailbook.lactation.curve;

/** Checks of the points a curve is fitted to; breaches are programming errors. */
final class Points {
    private Points() {}

    static void require(double[] daysInMilk, double[] milkKg) {
        if (daysInMilk.length != milkKg.length) {
            throw new IllegalArgumentException("daysInMilk (" + daysInMilk.length + ") and milkKg (" + milkKg.length
                    + ") must have the same length");
        }
        for (int i = 0; i < daysInMilk.length; i++) {
            if (!(daysInMilk[i] > 0) || !Double.isFinite(daysInMilk[i])) {
                throw new IllegalArgumentException("daysInMilk (" + daysInMilk[i] + ") must be finite and above 0");
            }
            if (!Double.isFinite(milkKg[i])) {
                throw new IllegalArgumentException("milkKg (" + milkKg[i] + ") must be finite");
            }
        }
    }
}
