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
 * First-test milk: the weight of the first test day, kg in 24 hours, if that test came on days 5 to 40; a later one is not comparable and
 * gives no value. Limits are ours.
 */
public final class FirstTestYield implements PublishedMethod {
    public static final FirstTestYield BY_DAY_40 = new FirstTestYield();

    private static final int LAST_DAYS_IN_MILK = 40;

    private FirstTestYield() {}

    public Figure ofLactation(Lactation lactation, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        Figure.Builder figure = Figure.of(this, "kg", asOf)
                .noInterval("one weight")
                .inputs(tests.inputs())
                .findings(tests.findings());
        if (tests.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        int day = tests.daysInMilk(0);
        if (day > LAST_DAYS_IN_MILK) {
            return figure.finding(Finding.on(tests.tests().get(0).date(), FindingCode.FIRST_TEST_TOO_LATE)
                            .withSeen("day " + day)
                            .withExpected("day " + LAST_DAYS_IN_MILK + " or before"))
                    .build();
        }
        double kg = tests.milkKg(0);
        return figure.value(kg)
                .explanation(new Explanation(
                        List.of(new Explanation.Part("day " + day + ": " + Rounding.halfUp(kg, 1) + " kg", kg))))
                .build();
    }

    @Override
    public String id() {
        return "first-test-yield";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation("Pailbook", 2026, "first test on days 5 to 40", HowKnown.OURS);
    }
}
