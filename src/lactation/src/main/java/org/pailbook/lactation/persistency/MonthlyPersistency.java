package org.pailbook.lactation.persistency;

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
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What of her milk a cow keeps in 30 days, from her last two tests: {@code 100 (y2 / y1)^(30 / interval)}, or drawn straight, {@code 100
 * (1 - (1 - y2 / y1) 30 / interval)}. Percent; above 100 while she rises.
 *
 * <p>The two differ a little unless the interval is 30 days; a figure says which it is. Common practice without a source; about 91 to 96 %
 * in older cows and 95 to 98 % in first lactations (from memory).
 */
public final class MonthlyPersistency implements PublishedMethod {
    public static final MonthlyPersistency POWER = new MonthlyPersistency("monthly-persistency-power", true);
    public static final MonthlyPersistency LINEAR = new MonthlyPersistency("monthly-persistency-linear", false);

    private static final double MONTH_DAYS = 30;

    private final String id;
    private final boolean isPower;

    private MonthlyPersistency(String id, boolean isPower) {
        this.id = id;
        this.isPower = isPower;
    }

    public static List<MonthlyPersistency> all() {
        return List.of(POWER, LINEAR);
    }

    /**
     * From two yields.
     *
     * @param earlierKg milk of 24 hours at the earlier test, above 0
     * @param laterKg milk of 24 hours at the later test, not below 0
     * @param intervalDays days between them, above 0
     * @return percent in 30 days
     * @throws IllegalArgumentException if a number is outside
     */
    public double pct(double earlierKg, double laterKg, double intervalDays) {
        if (!(earlierKg > 0) || !(laterKg >= 0) || !(intervalDays > 0)) {
            throw new IllegalArgumentException("earlierKg (" + earlierKg + ") and intervalDays (" + intervalDays
                    + ") must be above 0 and laterKg (" + laterKg + ") not below it");
        }
        double ratio = laterKg / earlierKg;
        return isPower
                ? 100 * Math.pow(ratio, MONTH_DAYS / intervalDays)
                : 100 * (1 - (1 - ratio) * MONTH_DAYS / intervalDays);
    }

    /** From the last two usable tests of a lactation; no value with fewer. */
    public Figure ofLactation(Lactation lactation, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        Figure.Builder figure = Figure.of(this, "%", asOf)
                .noInterval("two weights only; their error is not known")
                .inputs(tests.inputs())
                .findings(tests.findings());
        int last = tests.count() - 1;
        if (last < 1) {
            return figure.finding(Finding.of(FindingCode.TOO_FEW_TESTS)
                            .withSeen(tests.count() + " tests")
                            .withExpected("2 tests or more"))
                    .build();
        }
        int intervalDays = tests.daysInMilk(last) - tests.daysInMilk(last - 1);
        double pct = pct(tests.milkKg(last - 1), tests.milkKg(last), intervalDays);
        String words = Rounding.halfUp(tests.milkKg(last), 1) + " kg after "
                + Rounding.halfUp(tests.milkKg(last - 1), 1) + " kg, " + intervalDays + " d";
        return figure.value(pct)
                .explanation(new Explanation(List.of(new Explanation.Part(words, pct))))
                .build();
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Common practice",
                2026,
                isPower ? "100 (y2 / y1)^(30 / interval)" : "100 (1 - (1 - y2 / y1) 30 / interval)",
                HowKnown.COMMON_PRACTICE);
    }
}
