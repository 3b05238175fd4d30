package org.pailbook.lactation.correctedmilk;

import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;

/**
 * What a cow is expected to eat from parity, energy in the milk, weight, body condition and day in milk, kg of dry matter a day: {@code
 * (3.7 + 5.7 par + 0.305 MilkE + 0.022 BW + (-0.689 - 1.87 par) BCS) (1 - (0.212 + 0.136 par) exp(-0.053 DIM))}, par 0 in the first
 * lactation and 1 later. It checks whether a herd's weights and feed fit together; it is no ration and no advice to feed.
 *
 * @see "NASEM (2021). Nutrient requirements of dairy cattle, 8th ed. (formula from memory)"
 */
public final class DryMatterIntakeNasem2021 implements PublishedMethod {
    public static final DryMatterIntakeNasem2021 NASEM = new DryMatterIntakeNasem2021();

    private static final double LEAST_CONDITION = 1;
    private static final double MOST_CONDITION = 5;

    private DryMatterIntakeNasem2021() {}

    /**
     * @param parity 1 or more
     * @param milkEnergyMcal net energy in the milk of 24 hours, Mcal, 0 or more
     * @param bodyWeightKg live weight, kg, above 0
     * @param bodyConditionScore 1 to 5
     * @param daysInMilk 0 or more
     */
    public Figure of(
            int parity,
            double milkEnergyMcal,
            double bodyWeightKg,
            double bodyConditionScore,
            int daysInMilk,
            LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(this, "kg/d", asOf).noInterval("a mean of groups of cows; single cows differ by several kg");
        boolean possible = parity >= 1
                && milkEnergyMcal >= 0
                && bodyWeightKg > 0
                && bodyConditionScore >= LEAST_CONDITION
                && bodyConditionScore <= MOST_CONDITION
                && daysInMilk >= 0;
        if (!possible) {
            return figure.finding(Finding.of(FindingCode.VALUE_IMPOSSIBLE)
                            .withSeen("parity " + parity + ", energy " + milkEnergyMcal + " Mcal, weight "
                                    + bodyWeightKg + " kg, condition " + bodyConditionScore + ", day " + daysInMilk)
                            .withExpected("parity from 1, energy and day 0 or more, weight above 0, condition 1 to 5"))
                    .build();
        }
        int later = parity > 1 ? 1 : 0;
        double appetite = 1 - (0.212 + 0.136 * later) * Math.exp(-0.053 * daysInMilk);
        double perCondition = -0.689 - 1.87 * later;
        String share = " x " + Rounding.halfUp(appetite, 4);
        Explanation explanation = new Explanation(List.of(
                new Explanation.Part("parity: " + (later == 1 ? "9.4" : "3.7") + share, (3.7 + 5.7 * later) * appetite),
                new Explanation.Part(
                        "milk: 0.305 x " + Rounding.halfUp(milkEnergyMcal, 1) + " Mcal" + share,
                        0.305 * milkEnergyMcal * appetite),
                new Explanation.Part(
                        "weight: 0.022 x " + Rounding.halfUp(bodyWeightKg, 0) + " kg" + share,
                        0.022 * bodyWeightKg * appetite),
                new Explanation.Part(
                        "condition: " + Rounding.halfUp(perCondition, 3) + " x "
                                + Rounding.halfUp(bodyConditionScore, 2) + share,
                        perCondition * bodyConditionScore * appetite)));
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    @Override
    public String id() {
        return "dry-matter-intake-nasem-2021";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "National Academies of Sciences, Engineering, and Medicine",
                2021,
                "Nutrient requirements of dairy cattle, 8th ed., dry matter intake of lactating cows",
                HowKnown.FROM_MEMORY);
    }
}
