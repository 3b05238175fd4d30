package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Rolling herd average: milk of all cows over the 365 days that end on a day, for each cow and year; dry cows and cows that left count by
 * their days. {@code sum of test interval milk / cow-days x 365}, kg per cow and year.
 *
 * <p>The oldest interval is cut to fit. Days of cows in milk after their last test, and of lactations without a test, are in neither sum
 * and are counted in a finding (ours): best asked for the day of a herd test. No value before the herd's tests reach back 365 days.
 *
 * @see "University of Kentucky extension, rolling herd average (read)"
 */
public final class RollingHerdAverage implements PublishedMethod {
    public static final RollingHerdAverage YEAR = new RollingHerdAverage();

    private static final int YEAR_DAYS = 365;

    private RollingHerdAverage() {}

    public Figure of(List<HerdStay> cows, LocalDate asOf) {
        LocalDate from = asOf.minusDays(YEAR_DAYS - 1L);
        Figure.Builder figure =
                Figure.of(this, "kg/year", asOf).noInterval("weights of test days only; their error is not known");
        Optional<LocalDate> firstTest = cows.stream()
                .flatMap(cow -> cow.lactations().stream())
                .flatMap(lactation -> lactation.testDays().stream())
                .map(TestDay::date)
                .min(Comparator.naturalOrder());
        if (firstTest.isEmpty() || firstTest.get().isAfter(from)) {
            long days = firstTest.isEmpty() ? 0 : Math.max(0, ChronoUnit.DAYS.between(firstTest.get(), asOf) + 1);
            return figure.finding(Finding.of(FindingCode.YEAR_INCOMPLETE)
                            .withSeen(days + " days so far")
                            .withExpected(YEAR_DAYS + " days"))
                    .build();
        }
        double milkKg = 0;
        long cowDays = 0;
        long unweighed = 0;
        for (HerdStay cow : cows) {
            cowDays += cow.cowDays(from, asOf);
            for (Lactation lactation : cow.lactations()) {
                Share share = share(cow, lactation, from, asOf);
                milkKg += share.milkKg;
                unweighed += share.unweighedDays;
            }
        }
        long weighedDays = cowDays - unweighed;
        if (weighedDays <= 0) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        if (unweighed > 0) {
            figure.finding(Finding.of(FindingCode.INCOMPLETE_SUM)
                    .withSeen(unweighed + " cow-days in milk after the last test or without one, in neither sum"));
        }
        double value = milkKg / weighedDays * YEAR_DAYS;
        String words = Rounding.halfUp(milkKg, 1) + " kg / " + weighedDays + " cow-days x " + YEAR_DAYS;
        List<Explanation.Part> parts = new ArrayList<>();
        parts.add(new Explanation.Part(words, value));
        return figure.value(value).explanation(new Explanation(parts)).build();
    }

    private record Share(double milkKg, long unweighedDays) {}

    /** Milk of one lactation inside the year and the stay, and the days of milking in it that no test covers. */
    private static Share share(HerdStay cow, Lactation lactation, LocalDate from, LocalDate asOf) {
        Lactation known = lactation.asOf(asOf);
        LocalDate firstDate = cow.entryDate().isAfter(from) ? cow.entryDate() : from;
        LocalDate lastThere = cow.exitDate()
                .map(exit -> exit.minusDays(1))
                .filter(day -> day.isBefore(asOf))
                .orElse(asOf);
        LocalDate lastDate =
                known.endDate().filter(end -> end.isBefore(lastThere)).orElse(lastThere);
        int beforeDay = Math.max(0, known.daysInMilk(firstDate) - 1);
        int endDay = known.daysInMilk(lastDate);
        if (endDay <= beforeDay) {
            return new Share(0, 0);
        }
        UsableTests tests = UsableTests.of(lactation, asOf);
        int lastTestDay = tests.isEmpty() ? 0 : tests.daysInMilk(tests.count() - 1);
        int countedTo = known.endDate().isPresent() && !tests.isEmpty() ? endDay : Math.min(endDay, lastTestDay);
        if (countedTo <= beforeDay) {
            return new Share(0, endDay - beforeDay);
        }
        double[] days = tests.daysInMilk();
        double[] kg = tests.milkKg();
        double toEnd = TestIntervalMethod.sumKg(days, kg, days.length, countedTo);
        double before = TestIntervalMethod.sumKg(days, kg, days.length, beforeDay);
        return new Share(toEnd - before, endDay - countedTo);
    }

    @Override
    public String id() {
        return "rolling-herd-average";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "University of Kentucky extension",
                2000,
                "rolling herd averages (extension sheet; year not given)",
                HowKnown.READ);
    }
}
