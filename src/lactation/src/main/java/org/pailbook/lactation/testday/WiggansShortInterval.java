package org.pailbook.lactation.testday;

import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.Milking.Session;

/**
 * A morning milking of two, less than 9 hours after the evening milking, brought to 24 hours by interval and stage of lactation: {@code
 * 2.465 x milk + (DIM - 158) x 0.01566}, kg.
 *
 * <p>This is the first row of the published table and the only one that could be read; every other milking has no value here. Percentages
 * of the milking are left as they are: for protein that is the published rule, for fat a factor is published that was not read.
 *
 * @see "Wiggans, G. R. USDA-ARS reference note, Estimating daily yields when not all milkings are weighed (formula and first row read);
 *     after DeLorenzo, M. A., Wiggans, G. R. (1986). J. Dairy Sci. 69:2386-2394 (pages from memory)"
 */
public final class WiggansShortInterval implements DailyYieldMethod {
    public static final WiggansShortInterval MORNING_UNDER_9_HOURS = new WiggansShortInterval();

    private static final double LONGEST_HOURS = 9.00;
    private static final double FACTOR = 2.465;
    /** Kg per day in milk away from {@link #MEAN_DAYS_IN_MILK}. */
    private static final double KG_PER_DAY_IN_MILK = 0.01566;

    private static final int MEAN_DAYS_IN_MILK = 158;

    private WiggansShortInterval() {}

    @Override
    public Outcome milkOf(MilkedDay day) {
        if (day.isWeighedWhole()) {
            return SumOfMilkings.ICAR.milkOf(day);
        }
        Milking milking = day.milkings().get(0);
        OptionalDouble hours = milking.hoursSincePrevious();
        boolean isFirstRow = day.milkingsPerDay() == 2
                && milking.session() == Session.AM
                && hours.orElse(LONGEST_HOURS) < LONGEST_HOURS
                && day.daysInMilk().isPresent();
        if (!isFirstRow) {
            return new Outcome(
                    List.of(),
                    List.of(Finding.on(day.date(), FindingCode.MILKING_FACTOR_UNKNOWN)
                            .withSeen(milking.session() + " of " + day.milkingsPerDay() + " milkings, hours "
                                    + (hours.isPresent() ? hours.getAsDouble() : "not known"))
                            .withExpected("AM of two, less than 9 hours since the last, day in milk known")));
        }
        int daysFromMean = day.daysInMilk().getAsInt() - MEAN_DAYS_IN_MILK;
        return new Outcome(
                List.of(
                        new Explanation.Part(
                                "2.465 x " + Rounding.halfUp(milking.milkKg(), 1) + " kg", FACTOR * milking.milkKg()),
                        new Explanation.Part(
                                "(day " + day.daysInMilk().getAsInt() + " - 158) x 0.01566 kg",
                                daysFromMean * KG_PER_DAY_IN_MILK)),
                List.of(Finding.on(day.date(), FindingCode.PART_OF_DAY_WEIGHED).withSeen("1 of 2 milkings")));
    }

    @Override
    public String id() {
        return "daily-wiggans-am-under-9h";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "DeLorenzo, M. A., Wiggans, G. R.",
                1986,
                "as given by Wiggans, G. R., USDA-ARS reference note, Estimating daily yields when not all milkings are weighed, first row",
                HowKnown.READ);
    }
}
