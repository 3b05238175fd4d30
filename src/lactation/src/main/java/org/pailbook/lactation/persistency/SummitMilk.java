package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.util.ArrayList;
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
 * Summit milk: the mean of the two highest of the first three test days, kg in 24 hours. No value before the third test.
 *
 * @see "Definition from memory; extension sheets on peak and summit milk"
 */
public final class SummitMilk implements PublishedMethod {
    public static final SummitMilk SUMMIT = new SummitMilk();

    private static final int TESTS = 3;

    private SummitMilk() {}

    public Figure ofLactation(Lactation lactation, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        Figure.Builder figure = Figure.of(this, "kg", asOf)
                .noInterval("a mean of two weights; nothing is claimed of other days")
                .inputs(tests.inputs())
                .findings(tests.findings());
        if (tests.count() < TESTS) {
            return figure.finding(Finding.of(FindingCode.TOO_FEW_TESTS)
                            .withSeen(tests.count() + " tests")
                            .withExpected(TESTS + " tests"))
                    .build();
        }
        int lowest = 0;
        for (int i = 1; i < TESTS; i++) {
            lowest = tests.milkKg(i) < tests.milkKg(lowest) ? i : lowest;
        }
        List<Explanation.Part> parts = new ArrayList<>();
        for (int i = 0; i < TESTS; i++) {
            if (i != lowest) {
                String words = "day " + tests.daysInMilk(i) + ": " + Rounding.halfUp(tests.milkKg(i), 1) + " kg / 2";
                parts.add(new Explanation.Part(words, tests.milkKg(i) / 2));
            }
        }
        Explanation explanation = new Explanation(parts);
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    @Override
    public String id() {
        return "summit-milk";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Common practice", 2026, "mean of the two highest of the first three tests", HowKnown.FROM_MEMORY);
    }
}
