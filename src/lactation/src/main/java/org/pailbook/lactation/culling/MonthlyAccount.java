package org.pailbook.lactation.culling;

import org.pailbook.lactation.correctedmilk.DryMatterIntakeNrc2001;

/** What a cow gives, eats, earns and risks in a month, at any milk level; the one place of this arithmetic. */
final class MonthlyAccount {
    private static final double DAYS_PER_WEEK = 7;
    private static final int LAST_FRESH_MONTH = 2;

    private final CullingPrices prices;
    private final HerdParameters herd;
    private final HealthBurden burden;

    MonthlyAccount(CullingPrices prices, HerdParameters herd, HealthBurden burden) {
        this.prices = prices;
        this.herd = herd;
        this.burden = burden;
    }

    CullingPrices prices() {
        return prices;
    }

    HerdParameters herd() {
        return herd;
    }

    HealthBurden burden() {
        return burden;
    }

    /** kg a day in the middle of the month. */
    double milkKgPerDay(int parity, int month, int pregnant, double level) {
        if (pregnant >= StageGrid.FIRST_DRY_MONTH) {
            return 0;
        }
        double factor = pregnant == 0 ? 1 : herd.pregnantMilkFactors().get(pregnant - 1);
        return herd.group(parity).milk().kgPerDay(month) * level * factor;
    }

    /** kg of dry matter a day: NRC 2001 with milk counted as of 4 % fat, or a share of her weight when dry. */
    double dryMatterKgPerDay(int parity, int month, int pregnant, double level) {
        double weight = herd.group(parity).bodyWeightKg();
        return pregnant >= StageGrid.FIRST_DRY_MONTH
                ? herd.dryIntakeShareOfWeight() * weight
                : DryMatterIntakeNrc2001.kgPerDay(
                        milkKgPerDay(parity, month, pregnant, level),
                        weight,
                        MilkByMonth.middleDay(month) / DAYS_PER_WEEK);
    }

    double milkCuPerMonth(int parity, int month, int pregnant, double level) {
        return StageGrid.DAYS_PER_MONTH * prices.milkCuPerKg() * milkKgPerDay(parity, month, pregnant, level);
    }

    double feedCuPerMonth(int parity, int month, int pregnant, double level) {
        double price = pregnant >= StageGrid.FIRST_DRY_MONTH
                ? prices.dryFeedCuPerKgDryMatter()
                : prices.lactatingFeedCuPerKgDryMatter();
        return StageGrid.DAYS_PER_MONTH * price * dryMatterKgPerDay(parity, month, pregnant, level);
    }

    double otherCuPerMonth() {
        return prices.otherCostCuPerMonth() + burden.extraCostCuPerMonth();
    }

    double breedingCu(int month, int pregnant, boolean isBred) {
        return isBred && pregnant == 0 && StageGrid.isBreedingMonth(month) ? prices.breedingCuPerOpenMonth() : 0;
    }

    /** Net revenue of keeping her for a month, without what comes after. */
    double netCuPerMonth(int parity, int month, int pregnant, double level, boolean isBred) {
        return milkCuPerMonth(parity, month, pregnant, level)
                - feedCuPerMonth(parity, month, pregnant, level)
                - otherCuPerMonth()
                - breedingCu(month, pregnant, isBred);
    }

    /** What she brings if sold by choice. */
    double saleCu(int parity) {
        return prices.saleCuPerKgLive() * herd.group(parity).bodyWeightKg();
    }

    double unplannedExitShare(int parity, int month) {
        double fresh = month <= LAST_FRESH_MONTH ? herd.freshExitFactor() : 1;
        return Math.min(1, herd.group(parity).unplannedExitSharePerMonth() * fresh * burden.unplannedExitFactor());
    }

    double conceptionShare(int parity, int month) {
        return StageGrid.isBreedingMonth(month) ? herd.group(parity).conceptionSharePerMonth() : 0;
    }
}
