package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.day.UpTo;

/**
 * One lactation of one cow: from a calving to its end, with the test days recorded in it.
 *
 * @param parity number of calvings including the one that began it, 1 or more
 * @param calvingDate day 0
 * @param endDate last day she was milked in it; empty while she is in milk or the end is not recorded
 * @param isEndEstimated the end was not recorded but worked out, see {@link EstimatedEnd}; false while there is no end
 * @param testDays sorted by date, as recorded: checks are made by those who use them
 */
public record Lactation(
        int parity,
        LocalDate calvingDate,
        Optional<LocalDate> endDate,
        boolean isEndEstimated,
        List<TestDay> testDays) {

    public Lactation {
        Objects.requireNonNull(calvingDate, "calvingDate");
        Objects.requireNonNull(endDate, "endDate");
        if (parity < 1) {
            throw new IllegalArgumentException("parity (" + parity + ") must be at least 1");
        }
        if (endDate.isPresent() && endDate.get().isBefore(calvingDate)) {
            throw new IllegalArgumentException(
                    "endDate (" + endDate.get() + ") must not be before calvingDate (" + calvingDate + ")");
        }
        if (isEndEstimated && endDate.isEmpty()) {
            throw new IllegalArgumentException("isEndEstimated (true) needs an endDate");
        }
        testDays = isInOrder(testDays)
                ? List.copyOf(testDays)
                // a stable sort: of two tests on one day the later entry stays the later
                : testDays.stream().sorted(Comparator.comparing(TestDay::date)).toList();
    }

    private static boolean isInOrder(List<TestDay> tests) {
        for (int i = 1; i < tests.size(); i++) {
            if (tests.get(i).date().isBefore(tests.get(i - 1).date())) {
                return false;
            }
        }
        return true;
    }

    /** A lactation whose end, if any, was recorded. */
    public Lactation(int parity, LocalDate calvingDate, Optional<LocalDate> endDate, List<TestDay> testDays) {
        this(parity, calvingDate, endDate, false, testDays);
    }

    /** A lactation still going on. */
    public static Lactation inMilk(int parity, LocalDate calvingDate, List<TestDay> testDays) {
        return new Lactation(parity, calvingDate, Optional.empty(), testDays);
    }

    /** The same lactation as it stood on that day: later tests are not there, and a later end has not happened. */
    public Lactation asOf(LocalDate day) {
        Optional<LocalDate> endKnown = endDate.filter(end -> !end.isAfter(day));
        List<TestDay> known = UpTo.day(day, testDays, TestDay::date);
        return known == testDays && endKnown.equals(endDate)
                ? this
                : new Lactation(parity, calvingDate, endKnown, isEndEstimated && endKnown.isPresent(), known);
    }

    public Lactation withEndDate(LocalDate lastMilkingDay) {
        return new Lactation(parity, calvingDate, Optional.of(lastMilkingDay), testDays);
    }

    /** The same lactation with an end that nobody recorded; figures made from it say so. */
    public Lactation withEstimatedEndDate(LocalDate lastMilkingDay) {
        return new Lactation(parity, calvingDate, Optional.of(lastMilkingDay), true, testDays);
    }

    /** Days in milk of that date, the calving day being 0. */
    public int daysInMilk(LocalDate date) {
        return DaysInMilk.on(calvingDate, date);
    }
}
