package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Names the test days of a cow that are used and odd: a value outside the usual range, or milk that changed much since the test before in
 * the same lactation. Nothing is changed or left out here; the findings go with every figure that uses the test.
 */
public final class OddTestDays {
    /** The change in percent, as named in the table of limits. */
    private static final String CHANGE = "milkChangePct";
    /** Two tests further apart say little of each other. Ours. */
    private static final long FURTHEST_APART_DAYS = 75;

    private OddTestDays() {}

    /**
     * The same tests, in order of date, each with what is odd about it.
     *
     * @param calvings days on which she calved: no test is compared over a calving
     * @param limits those of a test's day hold for it
     */
    public static List<TestDay> named(
            List<TestDay> tests, List<LocalDate> calvings, BreedGroup breeds, DatedLimits limits) {
        List<TestDay> named = new ArrayList<>();
        TestDay before = null;
        for (TestDay test :
                tests.stream().sorted(Comparator.comparing(TestDay::date)).toList()) {
            List<Finding> odd = new ArrayList<>();
            limits.on(test.date()).check(test, breeds).stream()
                    .filter(finding -> finding.code() == FindingCode.IMPLAUSIBLE)
                    .forEach(odd::add);
            if (before != null && areComparable(before, test, calvings)) {
                addChange(odd, before, test, limits.on(test.date()));
            }
            named.add(test.withNotes(odd));
            before = test.milkKg().isPresent() ? test : before;
        }
        return named;
    }

    private static boolean areComparable(TestDay before, TestDay test, List<LocalDate> calvings) {
        return test.milkKg().isPresent()
                && before.milkKg().orElse(0) > 0
                && test.date().toEpochDay() - before.date().toEpochDay() <= FURTHEST_APART_DAYS
                && calvings.stream().noneMatch(calved -> calved.isAfter(before.date()) && !calved.isAfter(test.date()));
    }

    private static void addChange(List<Finding> odd, TestDay before, TestDay test, ValueLimits limits) {
        double was = before.milkKg().getAsDouble();
        double is = test.milkKg().getAsDouble();
        limits.of(CHANGE, ValueLimit.Layer.USUAL, BreedGroup.UNKNOWN)
                .filter(limit -> !limit.holds((is - was) / was * 100))
                .ifPresent(limit -> odd.add(Finding.on(test.date(), FindingCode.MILK_CHANGE)
                        .withField("milkKg")
                        .withSeen(
                                SentenceCode.AFTER_TEST,
                                Amount.measured(is, Amount.ALL, "kg"),
                                Amount.measured(was, Amount.ALL, "kg"),
                                before.date())
                        .withExpected(limits.told(limit, Sentence.of(SentenceCode.FROM_TEST_BEFORE, limit.said())))));
    }
}
