package org.pailbook.lactation.testday;

import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * All milkings of the day weighed: their sum, and if the hours since the milking before each are known and do not add up to 24, {@code sum
 * x 24 / hours}. A day of which a part was weighed has no value here: it takes a factor.
 *
 * @see "ICAR Guidelines, Section 2 (from memory)"
 */
public final class SumOfMilkings implements DailyYieldMethod {
    public static final SumOfMilkings ICAR = new SumOfMilkings();

    private static final double DAY_HOURS = 24;

    private SumOfMilkings() {}

    @Override
    public Outcome milkOf(MilkedDay day) {
        if (!day.isWeighedWhole()) {
            return new Outcome(
                    List.of(),
                    List.of(Finding.on(day.date(), FindingCode.MILKING_FACTOR_UNKNOWN)
                            .withSeen(
                                    SentenceCode.MILKINGS_WEIGHED,
                                    day.milkings().size(),
                                    day.milkingsPerDay())
                            .withExpected(SentenceCode.ALL_WEIGHED)));
        }
        List<Finding> findings = new ArrayList<>();
        double hours = 0;
        boolean hoursKnown = true;
        for (Milking milking : day.milkings()) {
            hoursKnown &= milking.hoursSincePrevious().isPresent();
            hours += milking.hoursSincePrevious().orElse(0);
        }
        if (!hoursKnown) {
            hours = DAY_HOURS;
            findings.add(Finding.on(day.date(), FindingCode.MILKING_HOURS_UNKNOWN));
        }
        List<Explanation.Part> parts = new ArrayList<>();
        for (Milking milking : day.milkings()) {
            String scale = hours == DAY_HOURS ? "" : " x 24 / " + Rounding.halfUp(hours, 2) + " h";
            parts.add(new Explanation.Part(
                    milking.session() + ": " + Rounding.halfUp(milking.milkKg(), 1) + " kg" + scale,
                    milking.milkKg() * DAY_HOURS / hours));
        }
        return new Outcome(parts, findings);
    }

    @Override
    public String id() {
        return "daily-sum-icar";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "ICAR", 2020, "Guidelines Section 2, 24-hour yield: sum x 24 / hours", HowKnown.FROM_MEMORY);
    }
}
