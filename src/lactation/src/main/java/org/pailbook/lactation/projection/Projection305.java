package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.projection.TestDayWeights.Predicted;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What one lactation is expected to come to, as of a day: the 305-day total, its parts, single days, and how sure each is.
 *
 * <p>Made by {@link BestPrediction}. Milk is always there; fat, protein and the cell score where the standards had them. The numbers are there at
 * once; figures, explanations and days are made when asked for. Milk, fat and protein in kg. Immutable.
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
    private static final int MILK = 0;

    private final Lactation lactation;
    private final TraitStandards standards;
    private final LocalDate asOf;
    private final TraitWeights weights;
    private final ProjectionFigures figures;
    private final Optional<ProjectionFigures> cellFigures;
    private final Optional<TraitWeights> cells;
    private final Predicted total;

    Projection305(
            PublishedMethod method,
            IntervalCalibration calibration,
            Lactation lactation,
            TraitStandards standards,
            LocalDate asOf,
            UsableTests usable,
            TraitWeights weights,
            Optional<TraitWeights> cells) {
        this.lactation = lactation;
        this.standards = standards;
        this.asOf = asOf;
        this.weights = weights;
        this.figures = new ProjectionFigures(method, calibration, lactation, asOf, standards, usable, weights);
        this.total = weights.of(MILK).total(MILK, TOTAL_DAYS);
        this.cells = cells;
        this.cellFigures = cells.map(ofCells -> new ProjectionFigures(
                method, calibration, lactation, asOf, ofCells.of(0).standards(), usable, ofCells));
    }

    /** Milk of days 1 to 305 with 80 and 95 % intervals, if she is milked to day 305; kg. */
    public Figure milk305() {
        return figures.total(MILK, TOTAL_DAYS, total);
    }

    /** Fat of days 1 to 305, kg; empty if it was projected from a milk standard alone. */
    public Optional<Figure> fat305() {
        return toDay(LactationTrait.FAT, TOTAL_DAYS);
    }

    /** Protein of days 1 to 305, kg; empty if it was projected from a milk standard alone. */
    public Optional<Figure> protein305() {
        return toDay(LactationTrait.PROTEIN, TOTAL_DAYS);
    }

    /** Mean somatic cell score of days 1 to 305; empty if it was projected without a standard for it. Read it with your veterinarian. */
    public Optional<Figure> cellScore305() {
        return cellFigures.map(ofCells ->
                ofCells.total(0, TOTAL_DAYS, cells.orElseThrow().of(0).total(0, TOTAL_DAYS)));
    }

    /**
     * Milk of days 1 to {@code toDay} if she is milked to that day, her planned dry-off for one; kg.
     *
     * @param toDay 1 to {@link LactationStandard#lastDay()}
     */
    public Figure milkToDay(int toDay) {
        return toDay(LactationTrait.MILK, toDay).orElseThrow();
    }

    /**
     * Milk, fat or protein of days 1 to {@code toDay} if she is milked to that day, kg.
     *
     * @return empty if the standards did not hold that trait
     */
    public Optional<Figure> toDay(LactationTrait trait, int toDay) {
        if (toDay < 1 || toDay > standards.first().lastDay()) {
            throw new IllegalArgumentException(
                    "toDay (" + toDay + ") must be 1 to " + standards.first().lastDay());
        }
        int index = standards.traits().indexOf(trait);
        return index < 0
                ? Optional.empty()
                : Optional.of(figures.total(index, toDay, weights.of(index).total(index, toDay)));
    }

    /** The 305-day milk as a bare number, kg. */
    public double milk305Kg() {
        return total.value();
    }

    /** Standard error of the 305-day milk, kg: the herd's unsure level and the calibration are in it. */
    public double standardErrorKg() {
        return figures.calibratedError(total);
    }

    /** The part of the standard error that all cows of the herd share, kg: in a sum over cows it adds up, the rest averages out. */
    public double sharedHerdErrorKg() {
        return total.herdErrorSd();
    }

    /** Share of the variance of 305-day milk between cows of the group that the tests explain; 0 without a test. */
    public double reliabilityShare() {
        return total.reliability();
    }

    /** The same for another trait; empty if the standards did not hold it. */
    public Optional<Double> reliabilityShare(LactationTrait trait) {
        int index = standards.traits().indexOf(trait);
        return index < 0
                ? Optional.empty()
                : Optional.of(weights.of(index).total(index, TOTAL_DAYS).reliability());
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
        return figures.tests();
    }

    /** Days in milk of the last test that took part, at most 305; 0 without a test. */
    public int producedThroughDay() {
        return Math.min(TOTAL_DAYS, figures.lastTestDay());
    }

    /** Milk from calving to the last test as the tests tell it, kg; with {@link #expectedRestKg()} it adds up to the 305-day milk. */
    public double producedKg() {
        return producedThroughDay() == 0
                ? 0
                : weights.of(MILK).total(MILK, producedThroughDay()).value();
    }

    /** Milk expected from the day after the last test to day 305, kg. */
    public double expectedRestKg() {
        return milk305Kg() - producedKg();
    }

    /** Expected milk of each day 1 to 305, index 0 is day 1, kg; a measured day has its weight. They add up to the 305-day milk. */
    public double[] dailyMilkKg() {
        double[] kg = new double[TOTAL_DAYS];
        for (int day = 1; day <= TOTAL_DAYS; day++) {
            kg[day - 1] = weights.of(MILK).day(MILK, day).value();
        }
        return kg;
    }

    /** Band of each day's milk 1 to 305, index 0 is day 1, kg. */
    public List<Interval> dailyBand(Coverage coverage) {
        List<Interval> band = new ArrayList<>(TOTAL_DAYS);
        for (int day = 1; day <= TOTAL_DAYS; day++) {
            band.add(figures.dayInterval(weights.of(MILK).day(MILK, day), coverage));
        }
        return band;
    }

    /** What milk she is expected to give on that date; empty before day 1 and after the last day of the standard. */
    public Optional<DayExpectation> onDate(LocalDate date) {
        int day = lactation.daysInMilk(date);
        if (day < 1 || day > standards.first().lastDay()) {
            return Optional.empty();
        }
        Predicted expected = weights.of(MILK).day(MILK, day);
        return Optional.of(new DayExpectation(
                date,
                day,
                expected.value(),
                figures.dayInterval(expected, Coverage.EIGHTY_PERCENT),
                figures.dayInterval(expected, Coverage.NINETY_FIVE_PERCENT)));
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
        int day =
                tests() == 0 ? DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM : figures.lastTestDay() + USUAL_TEST_INTERVAL_DAYS;
        while (day <= asOfDay) {
            day += USUAL_TEST_INTERVAL_DAYS;
        }
        return onDate(DaysInMilk.dateOf(lactation.calvingDate(), day));
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
