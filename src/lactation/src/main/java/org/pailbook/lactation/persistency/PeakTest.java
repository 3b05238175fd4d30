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
 * Peak milk by test: the highest test day of early lactation, kg in 24 hours. The peak of a fitted curve is another figure.
 *
 * <p>{@link #WITHIN_150_DAYS} looks at tests before day 150 and is fixed once she is past day 100; {@link #WITHIN_90_DAYS} looks at the
 * first 90 days. While the days are not over the figure says that a higher test may come.
 *
 * @see "University of Kentucky extension, Using peak and summit milk (150 days, fixed past day 100); Utah State extension, Peak milk (90)"
 */
public final class PeakTest implements PublishedMethod {
    public static final PeakTest WITHIN_150_DAYS =
            new PeakTest("peak-test-150", 149, 100, "University of Kentucky extension", "Using peak and summit milk");
    public static final PeakTest WITHIN_90_DAYS =
            new PeakTest("peak-test-90", 90, 90, "Utah State University extension", "Peak milk");

    private final String id;
    private final int lastDaysInMilk;
    private final int fixedAfterDaysInMilk;
    private final String issuer;
    private final String sheet;

    private PeakTest(String id, int lastDaysInMilk, int fixedAfterDaysInMilk, String issuer, String sheet) {
        this.id = id;
        this.lastDaysInMilk = lastDaysInMilk;
        this.fixedAfterDaysInMilk = fixedAfterDaysInMilk;
        this.issuer = issuer;
        this.sheet = sheet;
    }

    public static List<PeakTest> all() {
        return List.of(WITHIN_150_DAYS, WITHIN_90_DAYS);
    }

    /** No value if there is no usable test in those days. */
    public Figure ofLactation(Lactation lactation, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        Figure.Builder figure = Figure.of(this, "kg", asOf)
                .noInterval("the highest of the weights there are; the cow may have peaked between two tests")
                .inputs(tests.inputs())
                .findings(tests.findings());
        int best = -1;
        for (int i = 0; i < tests.count() && tests.daysInMilk(i) <= lastDaysInMilk; i++) {
            best = best < 0 || tests.milkKg(i) > tests.milkKg(best) ? i : best;
        }
        if (best < 0) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS).withExpected("a test by day " + lastDaysInMilk))
                    .build();
        }
        Lactation known = lactation.asOf(asOf);
        if (known.endDate().isEmpty() && known.daysInMilk(asOf) <= fixedAfterDaysInMilk) {
            figure.finding(Finding.of(FindingCode.PEAK_MAY_COME)
                    .withSeen("day " + known.daysInMilk(asOf))
                    .withExpected("past day " + fixedAfterDaysInMilk));
        }
        String words = "day " + tests.daysInMilk(best) + ": " + Rounding.halfUp(tests.milkKg(best), 1) + " kg";
        return figure.value(tests.milkKg(best))
                .explanation(new Explanation(List.of(new Explanation.Part(words, tests.milkKg(best)))))
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
        return new Citation(issuer, 2000, sheet + " (extension sheet; year not given)", HowKnown.READ);
    }
}
