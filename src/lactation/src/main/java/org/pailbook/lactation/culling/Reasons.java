package org.pailbook.lactation.culling;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Why a cow's pay-off is what it is: one thing after the other is set to what is typical of the herd (mean level; pregnant as long as the median
 * pregnant cow of the model, as far as her month allows; parity 2; healthy) and the pay-off made again. Ours.
 */
final class Reasons {
    private static final int REASONS_SHOWN = 2;
    private static final int TYPICAL_PARITY = 2;
    /** Differences below this are rounding. */
    private static final double NOTHING_CU = 1e-9;

    private final Valuation base;
    private final Valuation own;
    private final SteadyState herd;

    /**
     * @param base of healthy cows
     * @param own with what her health costs
     */
    Reasons(Valuation base, Valuation own, SteadyState herd) {
        this.base = base;
        this.own = own;
        this.herd = herd;
    }

    /** The two largest differences, largest first. */
    List<Reason> of(CullingCow cow, CowPlace place, double payoffCu) {
        double level = cow.milk().ratio();
        List<Reason> reasons = new ArrayList<>();
        reasons.add(new Reason(
                Reason.About.MILK_LEVEL, Words.milkLevel(level), payoffCu - own.payoffCu(place, typicalLevel(own))));
        int typical = herd.medianMonthsPregnant();
        int atLeast = place.month() - StageGrid.BREED_TO;
        int atMost = place.month() - StageGrid.BREED_FROM;
        if (atMost >= 1) {
            int months = Math.min(StageGrid.LONGEST_PREGNANCY, Math.max(atLeast, Math.min(typical, atMost)));
            reasons.add(new Reason(
                    Reason.About.PREGNANCY,
                    Words.pregnancy(place, months),
                    payoffCu - own.payoffCu(place.pregnantFor(months), level)));
        }
        reasons.add(new Reason(
                Reason.About.PARITY,
                Words.parity(cow.parity()),
                payoffCu - own.payoffCu(place.ofParity(TYPICAL_PARITY), level)));
        reasons.add(new Reason(
                Reason.About.HEALTH,
                Words.health(own.table().account().burden()),
                payoffCu - base.payoffCu(place, level)));
        return reasons.stream()
                .filter(reason -> Math.abs(reason.differenceCu()) > NOTHING_CU)
                .sorted(Comparator.comparingDouble((Reason reason) -> -Math.abs(reason.differenceCu())))
                .limit(REASONS_SHOWN)
                .toList();
    }

    private static double typicalLevel(Valuation own) {
        return own.table().account().herd().classFactors().get(1);
    }
}
