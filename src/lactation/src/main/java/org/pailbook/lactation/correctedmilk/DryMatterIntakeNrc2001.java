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
 * What a cow of that milk and weight is expected to eat, kg of dry matter a day: {@code (0.372 FCM + 0.0968 BW^0.75) (1 - exp(-0.192 (week
 * + 3.67)))}. It checks whether a herd's weights and feed fit together; it is no ration and no advice to feed.
 *
 * @see "National Research Council (2001). Nutrient requirements of dairy cattle, 7th ed. (formula from memory)"
 */
public final class DryMatterIntakeNrc2001 implements PublishedMethod {
    public static final DryMatterIntakeNrc2001 NRC = new DryMatterIntakeNrc2001();

    private DryMatterIntakeNrc2001() {}

    /**
     * @param fcm4Kg 4 % fat-corrected milk of 24 hours, kg, 0 or more
     * @param bodyWeightKg live weight, kg, above 0
     * @param week week of lactation, 0 or more
     */
    public Figure of(double fcm4Kg, double bodyWeightKg, double week, LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(this, "kg/d", asOf).noInterval("a mean of groups of cows; single cows differ by several kg");
        if (!(fcm4Kg >= 0 && bodyWeightKg > 0 && week >= 0)) {
            return figure.finding(Finding.of(FindingCode.VALUE_IMPOSSIBLE)
                            .withSeen("milk " + fcm4Kg + " kg, weight " + bodyWeightKg + " kg, week " + week)
                            .withExpected("milk and week 0 or more, weight above 0"))
                    .build();
        }
        double appetite = appetiteShare(week);
        String share = " x " + Rounding.halfUp(appetite, 4);
        Explanation explanation = new Explanation(List.of(
                new Explanation.Part(
                        "milk: 0.372 x " + Rounding.halfUp(fcm4Kg, 1) + " kg" + share, 0.372 * fcm4Kg * appetite),
                new Explanation.Part(
                        "weight: 0.0968 x " + Rounding.halfUp(bodyWeightKg, 0) + "^0.75" + share,
                        0.0968 * Math.pow(bodyWeightKg, 0.75) * appetite)));
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    /**
     * The bare figure, for models that need thousands of them.
     *
     * @param fcm4Kg 4 % fat-corrected milk of 24 hours, kg
     * @param bodyWeightKg live weight, kg
     * @param week week of lactation
     * @return kg of dry matter a day
     */
    public static double kgPerDay(double fcm4Kg, double bodyWeightKg, double week) {
        return (0.372 * fcm4Kg + 0.0968 * Math.pow(bodyWeightKg, 0.75)) * appetiteShare(week);
    }

    private static double appetiteShare(double week) {
        return 1 - Math.exp(-0.192 * (week + 3.67));
    }

    @Override
    public String id() {
        return "dry-matter-intake-nrc-2001";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "National Research Council",
                2001,
                "Nutrient requirements of dairy cattle, 7th ed., dry matter intake of lactating cows",
                HowKnown.FROM_MEMORY);
    }
}
