package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Which test days of a lactation may take part in a milk figure, and why the others may not.
 *
 * <p>Left out, each with a finding: tests on or before the calving day, tests after the end, tests on days 1 to 4 (colostrum),
 * tests without a milk weight, weights outside {@value #LEAST_MILK_KG} to {@value #MOST_MILK_KG} kg until somebody confirms them,
 * and of two usable tests on one day the earlier entry. Tests after the as-of date are not mentioned: on that day they did not
 * exist. What is to be said about a test, used or not, is among the findings.
 *
 * @param calvingDate day 0 of the lactation
 * @param tests usable, one a day, in order of date; every one has a milk weight
 * @param leftOut looked at and not used, in order of date
 * @param findings why they were left out, in order of date
 * @see "ICAR Guidelines, Section 2: range of milk weights and first day of recording; both from memory"
 */
public record UsableTests(LocalDate calvingDate, List<TestDay> tests, List<UsedInput> leftOut, List<Finding> findings) {
    /** Least 24-hour milk weight accepted without confirmation, kg; ICAR, from memory. */
    public static final double LEAST_MILK_KG = 3.0;

    /** Greatest 24-hour milk weight accepted without confirmation, kg; ICAR, from memory. */
    public static final double MOST_MILK_KG = 99.9;

    /** {@link UsedInput#kind()} of a test day. */
    public static final String TEST_DAY = "test-day";

    public UsableTests {
        Objects.requireNonNull(calvingDate, "calvingDate");
        tests = List.copyOf(tests);
        leftOut = List.copyOf(leftOut);
        findings = List.copyOf(findings);
        for (TestDay test : tests) {
            if (test.milkKg().isEmpty()) {
                throw new IllegalArgumentException("tests (" + test.date() + ") must all have a milk weight");
            }
        }
    }

    /**
     * Sorts the tests of a lactation as it stood on a day.
     *
     * @param asOf later tests, and an end of the lactation after it, are as if not recorded
     */
    public static UsableTests of(Lactation lactation, LocalDate asOf) {
        Lactation known = lactation.asOf(asOf);
        List<TestDay> recorded = known.testDays();
        List<TestDay> tests = new ArrayList<>(recorded.size());
        List<UsedInput> leftOut = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < recorded.size(); i++) {
            TestDay test = recorded.get(i);
            Optional<Finding> problem = problem(known, test);
            findings.addAll(test.notes());
            if (problem.isEmpty() && isReplaced(known, i)) {
                problem = Optional.of(Finding.on(test.date(), FindingCode.DUPLICATE_TEST_DAY));
            }
            if (problem.isEmpty()) {
                tests.add(test);
            } else {
                leftOut.add(UsedInput.leftOut(
                        TEST_DAY, test.date(), problem.get().code().code()));
                findings.add(problem.get());
            }
        }
        return new UsableTests(known.calvingDate(), tests, leftOut, findings);
    }

    /** Only a usable entry replaces an earlier one of the day: a blank or absurd second entry does not erase a weighing. */
    private static boolean isReplaced(Lactation known, int index) {
        List<TestDay> recorded = known.testDays();
        LocalDate date = recorded.get(index).date();
        for (int later = index + 1;
                later < recorded.size() && recorded.get(later).date().equals(date);
                later++) {
            if (problem(known, recorded.get(later)).isEmpty()) {
                return true;
            }
        }
        return false;
    }

    private static Optional<Finding> problem(Lactation lactation, TestDay test) {
        LocalDate date = test.date();
        int daysInMilk = lactation.daysInMilk(date);
        OptionalDouble milkKg = test.milkKg();
        if (daysInMilk <= 0) {
            return Optional.of(Finding.on(date, FindingCode.TEST_BEFORE_CALVING));
        }
        if (lactation.endDate().isPresent() && date.isAfter(lactation.endDate().get())) {
            return Optional.of(Finding.on(date, FindingCode.TEST_AFTER_END));
        }
        if (daysInMilk < DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM) {
            return Optional.of(
                    Finding.on(date, FindingCode.TEST_ON_COLOSTRUM_DAYS).withSeen(SentenceCode.DAY, daysInMilk));
        }
        if (milkKg.isEmpty()) {
            return Optional.of(Finding.on(date, FindingCode.MILK_MISSING).withField("milkKg"));
        }
        if (!(milkKg.getAsDouble() >= LEAST_MILK_KG && milkKg.getAsDouble() <= MOST_MILK_KG)) {
            return Optional.of(Finding.on(date, FindingCode.OUT_OF_RANGE)
                    .withField("milkKg")
                    .withSeen(Sentence.verbatim(Amount.measured(milkKg.getAsDouble(), Amount.ALL, "kg")))
                    .withExpected(
                            SentenceCode.RANGE,
                            Amount.weight(LEAST_MILK_KG, 1),
                            Amount.measured(MOST_MILK_KG, 1, "kg")));
        }
        return Optional.empty();
    }

    public int count() {
        return tests.size();
    }

    public boolean isEmpty() {
        return tests.isEmpty();
    }

    /** Days in milk of test {@code index}, counted from 0; the calving day is day 0. */
    public int daysInMilk(int index) {
        return DaysInMilk.on(calvingDate, tests.get(index).date());
    }

    /** Milk of 24 hours at test {@code index}, counted from 0, kg. */
    public double milkKg(int index) {
        return tests.get(index).milkKg().orElseThrow();
    }

    /** Days in milk of every usable test, in order. A fresh array. */
    public double[] daysInMilk() {
        double[] days = new double[count()];
        for (int i = 0; i < days.length; i++) {
            days[i] = daysInMilk(i);
        }
        return days;
    }

    /** Milk of every usable test in kg, same order as {@link #daysInMilk()}. A fresh array. */
    public double[] milkKg() {
        double[] kg = new double[count()];
        for (int i = 0; i < kg.length; i++) {
            kg[i] = milkKg(i);
        }
        return kg;
    }

    /** Used and left out together, in order of date: what a figure made from these tests lists as its inputs. */
    public List<UsedInput> inputs() {
        return Stream.concat(tests.stream().map(test -> UsedInput.used(TEST_DAY, test.date())), leftOut.stream())
                .sorted(Comparator.comparing(UsedInput::date))
                .toList();
    }
}
