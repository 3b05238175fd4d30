package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.TestDayWeights.Predicted;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What one lactation is expected to come to, as of a day: the 305-day total, its parts, single days, and how sure each is.
 *
 * <p>Made by {@link BestPrediction}. The number is there at once; figures, explanations and days are made when asked for. All kg. Immutable.
 */
public final class Projection305 {
    /** Under so many tests the figure says that it rests on few; a limit of ours. */
    public static final int FEW_TESTS = 4;

    /** A first test after this day is called late; ICAR, from memory. */
    public static final int LATE_FIRST_TEST_DAYS_IN_MILK = 75;

    /** Longest gap between tests that goes without a word, days; ICAR, from memory. */
    public static final int LONGEST_GAP_DAYS = 75;

    /** Usual days between tests: the four weeks of ICAR's reference plan, from memory. */
    public static final int USUAL_TEST_INTERVAL_DAYS = 28;

    private static final int TOTAL_DAYS = DaysInMilk.STANDARD_LACTATION_DAYS;

    private final BestPrediction method;
    private final Lactation lactation;
    private final LactationStandard standard;
    private final LocalDate asOf;
    private final UsableTests usable;
    private final int[] testDays;
    private final TestDayWeights weights;
    private final Predicted total;

    Projection305(
            BestPrediction method,
            Lactation lactation,
            LactationStandard standard,
            LocalDate asOf,
            UsableTests usable,
            int[] testDays,
            TestDayWeights weights) {
        this.method = method;
        this.lactation = lactation;
        this.standard = standard;
        this.asOf = asOf;
        this.usable = usable;
        this.testDays = testDays;
        this.weights = weights;
        this.total = weights.total(TOTAL_DAYS);
    }

    /** Milk of days 1 to 305 with 80 and 95 % intervals, if she is milked to day 305; kg. */
    public Figure milk305() {
        return totalToDay(TOTAL_DAYS, total);
    }

    /**
     * Milk of days 1 to {@code toDay} if she is milked to that day, her planned dry-off for one; kg.
     *
     * @param toDay 1 to {@link LactationStandard#lastDay()}
     */
    public Figure milkToDay(int toDay) {
        return totalToDay(requireDay(toDay), weights.total(toDay));
    }

    /** The 305-day milk as a bare number, kg. */
    public double milk305Kg() {
        return total.kg();
    }

    /** Standard error of the 305-day milk, kg: the herd's unsure level and the calibration are in it. */
    public double standardErrorKg() {
        return total.standardErrorKg() * method.calibration().factor(tests());
    }

    /** The part of the standard error that all cows of the herd share, kg: in a sum over cows it adds up, the rest averages out. */
    public double sharedHerdErrorKg() {
        return total.herdErrorSdKg();
    }

    /** Share of the variance of 305-day milk between cows of the group that the tests explain; 0 without a test. */
    public double reliabilityShare() {
        return total.reliability();
    }

    /**
     * Data collection rating: 104 times the reliability, so that ten monthly tests of all milkings rate 100.
     *
     * @see "VanRaden, P. M., reference note Data Collection Rating, USDA-ARS (read)"
     */
    public double dataCollectionRating() {
        return 104 * total.reliability();
    }

    /** Tests that took part. */
    public int tests() {
        return testDays.length;
    }

    /** Days in milk of the last test that took part, at most 305; 0 without a test. */
    public int producedThroughDay() {
        return testDays.length == 0 ? 0 : Math.min(TOTAL_DAYS, testDays[testDays.length - 1]);
    }

    /** Milk from calving to the last test as the tests tell it, kg; with {@link #expectedRestKg()} it adds up to the 305-day milk. */
    public double producedKg() {
        return producedThroughDay() == 0
                ? 0
                : weights.total(producedThroughDay()).kg();
    }

    /** Milk expected from the day after the last test to day 305, kg. */
    public double expectedRestKg() {
        return milk305Kg() - producedKg();
    }

    /** Expected milk of each day 1 to 305, index 0 is day 1, kg; a measured day has its weight. They add up to the 305-day milk. */
    public double[] dailyMilkKg() {
        double[] kg = new double[TOTAL_DAYS];
        for (int day = 1; day <= TOTAL_DAYS; day++) {
            kg[day - 1] = weights.day(day).kg();
        }
        return kg;
    }

    /** Band of each day 1 to 305, index 0 is day 1. */
    public List<Interval> dailyBand(Coverage coverage) {
        List<Interval> band = new ArrayList<>(TOTAL_DAYS);
        for (int day = 1; day <= TOTAL_DAYS; day++) {
            band.add(dayInterval(weights.day(day), coverage));
        }
        return band;
    }

    /** What she is expected to give on that date; empty before day 1 and after the last day of the standard. */
    public Optional<DayExpectation> onDate(LocalDate date) {
        int day = lactation.daysInMilk(date);
        if (day < 1 || day > standard.lastDay()) {
            return Optional.empty();
        }
        Predicted expected = weights.day(day);
        return Optional.of(new DayExpectation(
                date,
                day,
                expected.kg(),
                dayInterval(expected, Coverage.EIGHTY_PERCENT),
                dayInterval(expected, Coverage.NINETY_FIVE_PERCENT)));
    }

    /**
     * Her next test: in steps of four weeks from the last one, or from day 5 without any, the first after the as-of date.
     *
     * @return empty once the lactation has ended
     */
    public Optional<DayExpectation> nextTestDay() {
        if (lactation.endDate().isPresent()) {
            return Optional.empty();
        }
        int asOfDay = lactation.daysInMilk(asOf);
        int day = testDays.length == 0
                ? DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM
                : testDays[testDays.length - 1] + USUAL_TEST_INTERVAL_DAYS;
        while (day <= asOfDay) {
            day += USUAL_TEST_INTERVAL_DAYS;
        }
        return onDate(DaysInMilk.dateOf(lactation.calvingDate(), day));
    }

    private Figure totalToDay(int toDay, Predicted predicted) {
        Figure.Builder figure = Figure.of(method, "kg", asOf)
                .value(predicted.kg())
                .explanation(explanation(toDay, predicted))
                .input(UsedInput.used("calving", lactation.calvingDate()))
                .inputs(inputs())
                .findings(findings(toDay));
        for (Coverage coverage : Coverage.values()) {
            figure.interval(totalInterval(toDay, predicted, coverage));
        }
        return figure.build();
    }

    private Interval totalInterval(int toDay, Predicted predicted, Coverage coverage) {
        double half = half(predicted, coverage);
        double low = predicted.kg() - half;
        int through = Math.min(toDay, producedThroughDay());
        if (through > 0) {
            Predicted produced = weights.total(through);
            double surelyProduced = produced.kg() - half(produced, coverage);
            // the tests may expect less than nothing for the rest; the figure stays inside its interval all the same
            low = Math.min(predicted.kg(), Math.max(low, surelyProduced));
        }
        return new Interval(coverage.share(), Math.max(low, Math.min(0, predicted.kg())), predicted.kg() + half);
    }

    private Interval dayInterval(Predicted predicted, Coverage coverage) {
        double half = half(predicted, coverage);
        // no cow gives less than nothing
        double low = Math.max(predicted.kg() - half, Math.min(0, predicted.kg()));
        return new Interval(coverage.share(), low, predicted.kg() + half);
    }

    private double half(Predicted predicted, Coverage coverage) {
        return predicted.standardErrorKg() * method.calibration().factor(tests()) * coverage.normalMultiple();
    }

    private Explanation explanation(int toDay, Predicted predicted) {
        List<Explanation.Part> parts = new ArrayList<>();
        parts.add(new Explanation.Part(
                "mean of her group, " + standard.group() + ", days 1 to " + toDay, predicted.meanKg()));
        for (int i = 0; i < testDays.length; i++) {
            double weight = predicted.weights()[i];
            double deviation = weights.deviationKg(i);
            parts.add(new Explanation.Part(
                    String.format(
                            Locale.ROOT,
                            "test on %s, day %d: %.1f kg against %.1f kg expected; %+.2f kg x %.1f",
                            usable.tests().get(i).date(),
                            testDays[i],
                            usable.milkKg(i),
                            standard.meanKg(testDays[i]),
                            deviation,
                            weight),
                    weight * deviation));
        }
        return new Explanation(parts);
    }

    private List<UsedInput> inputs() {
        LocalDate lastDate = DaysInMilk.dateOf(lactation.calvingDate(), standard.lastDay());
        return usable.inputs().stream()
                .map(input -> input.isUsed() && input.date().isAfter(lastDate)
                        ? UsedInput.leftOut(input.kind(), input.date(), "after the last day of the standard")
                        : input)
                .toList();
    }

    private List<Finding> findings(int toDay) {
        List<Finding> findings = new ArrayList<>(usable.findings());
        findings.addAll(standard.findings());
        if (testDays.length == 0) {
            findings.add(Finding.of(FindingCode.NO_TEST_YET).withSeen("0 test days"));
        } else if (testDays.length < FEW_TESTS) {
            findings.add(Finding.of(FindingCode.FEW_TEST_DAYS)
                    .withSeen(testDays.length == 1 ? "1 test day" : testDays.length + " test days"));
        }
        if (testDays.length > 0 && testDays[0] > LATE_FIRST_TEST_DAYS_IN_MILK) {
            findings.add(Finding.on(usable.tests().get(0).date(), FindingCode.FIRST_TEST_LATE)
                    .withSeen("day " + testDays[0])
                    .withExpected("by day " + LATE_FIRST_TEST_DAYS_IN_MILK));
        }
        longestGap()
                .ifPresent(test ->
                        findings.add(Finding.on(usable.tests().get(test).date(), FindingCode.LONG_INTERVAL)
                                .withSeen((testDays[test] - testDays[test - 1]) + " days since the test before")
                                .withExpected("at most " + LONGEST_GAP_DAYS + " days")));
        int asOfDay = lactation.daysInMilk(asOf);
        if (lactation.endDate().isPresent()) {
            LocalDate end = lactation.endDate().get();
            findings.add(Finding.on(end, FindingCode.LACTATION_ENDED).withSeen("day " + lactation.daysInMilk(end)));
        } else if (toDay == TOTAL_DAYS && asOfDay < TOTAL_DAYS) {
            findings.add(Finding.of(FindingCode.IF_MILKED_TO_305).withSeen("day " + asOfDay));
        }
        return findings;
    }

    private OptionalInt longestGap() {
        int longest = -1;
        for (int i = 1; i < testDays.length; i++) {
            int gap = testDays[i] - testDays[i - 1];
            if (gap > LONGEST_GAP_DAYS && (longest < 0 || gap > testDays[longest] - testDays[longest - 1])) {
                longest = i;
            }
        }
        return longest < 0 ? OptionalInt.empty() : OptionalInt.of(longest);
    }

    private int requireDay(int day) {
        if (day < 1 || day > standard.lastDay()) {
            throw new IllegalArgumentException("toDay (" + day + ") must be 1 to " + standard.lastDay());
        }
        return day;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.0f kg in 305 days (standard error %.0f kg, %d tests) as of %s",
                milk305Kg(),
                standardErrorKg(),
                tests(),
                asOf);
    }
}
