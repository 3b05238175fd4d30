package org.pailbook.lactation.culling;

import org.pailbook.lactation.figure.Rounding;

/** Reasons in words, with a cow's figures beside what is typical. */
final class Words {
    private static final int PERCENT = 100;

    private Words() {}

    static String milkLevel(double level) {
        return "milk " + Rounding.halfUp(level * PERCENT, 0) + " % of the mean of her group; typical 100 %";
    }

    static String pregnancy(CowPlace place, int typicalMonths) {
        String hers;
        if (place.pregnantShare() == 1) {
            hers = place.monthsPregnant() + " months pregnant";
        } else if (place.pregnantShare() == 0) {
            hers = "open";
        } else {
            hers = "pregnant with a chance of " + Rounding.halfUp(place.pregnantShare() * PERCENT, 1) + " %";
        }
        return hers + " in month in milk " + place.month() + "; typical " + typicalMonths + " months pregnant";
    }

    static String parity(int parity) {
        return "parity " + parity + "; typical 2";
    }

    static String health(HealthBurden burden) {
        return "health as entered: " + Rounding.halfUp(burden.extraCostCuPerMonth(), 2) + " cu a month, exits x "
                + Rounding.halfUp(burden.unplannedExitFactor(), 2) + "; typical none";
    }
}
