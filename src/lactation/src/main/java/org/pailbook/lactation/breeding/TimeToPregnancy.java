package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.KaplanMeier;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * Days from the end of the waiting period to pregnancy, with the cows not pregnant yet counted as far as they are known to be open:
 * Kaplan-Meier. The median is the day by which half of the cows are pregnant.
 *
 * <p>A cow is followed until she left, was put aside, or the last day; one whose last service has no outcome yet until that service (ours).
 * Cows that conceived before the waiting period ended, and heifers, take no part.
 *
 * @see "Kaplan and Meier 1958 (from memory)"
 */
public final class TimeToPregnancy implements PublishedMethod {
    public static final TimeToPregnancy KAPLAN_MEIER = new TimeToPregnancy();

    private static final double COVERAGE = 0.95;

    private TimeToPregnancy() {}

    /**
     * The days after which cows became pregnant.
     *
     * @param day after the waiting period
     * @param atRisk cows followed up to it and not pregnant before
     * @param pregnant on it
     * @param stillOpenShare 0 to 1, after it
     * @param standardError of that share, Greenwood's
     * @param low end of its 95 % interval, on the scale of log(-log)
     * @param high end of it
     */
    public record Step(
            int day, int atRisk, int pregnant, double stillOpenShare, double standardError, double low, double high) {}

    /**
     * @param cows followed
     * @param pregnant of them
     * @param steps in order of day
     * @param median day by which half are pregnant, after the waiting period
     */
    public record Curve(int cows, int pregnant, List<Step> steps, Figure median) {
        public Curve {
            steps = List.copyOf(steps);
        }
    }

    private record Followed(int days, boolean pregnant) {}

    /** Periods whose waiting period ended in those days. */
    public Curve of(List<BreedingPeriod> periods, int waitingDays, LocalDate from, LocalDate asOf) {
        List<Followed> followed = new ArrayList<>();
        for (BreedingPeriod period : periods) {
            period.waitingEnd(waitingDays)
                    .filter(start -> !start.isBefore(from) && !start.isAfter(asOf))
                    .flatMap(start -> follow(period, start, waitingDays, asOf))
                    .ifPresent(followed::add);
        }
        return curve(
                followed.stream().mapToInt(Followed::days).toArray(),
                followed.stream().map(Followed::pregnant).toList(),
                asOf);
    }

    private static Optional<Followed> follow(BreedingPeriod period, LocalDate start, int waitingDays, LocalDate asOf) {
        Optional<DaysAtRisk.Run> run = DaysAtRisk.of(period, waitingDays, asOf).first();
        if (run.isEmpty() || !run.get().from().equals(start)) {
            return Optional.empty();
        }
        DaysAtRisk.Run first = run.get();
        LocalDate end = first.conceived()
                ? first.to()
                : period.services().stream()
                        .filter(service -> service.outcome() == Outcome.UNKNOWN)
                        .map(CountedService::firstDate)
                        .min(Comparator.naturalOrder())
                        .filter(day -> day.isBefore(first.to()))
                        .orElse(first.to());
        int days = Math.toIntExact(ChronoUnit.DAYS.between(start, end));
        return days < 0 ? Optional.empty() : Optional.of(new Followed(days, first.conceived()));
    }

    /**
     * The curve of days already counted.
     *
     * @param days after the waiting period, one a cow
     * @param pregnant whether she became pregnant on that day; else she is known to be open up to it
     */
    public Curve curve(int[] days, List<Boolean> pregnant, LocalDate asOf) {
        double[] times = new double[days.length];
        boolean[] happened = new boolean[days.length];
        int found = 0;
        for (int i = 0; i < days.length; i++) {
            times[i] = days[i];
            happened[i] = pregnant.get(i);
            found += happened[i] ? 1 : 0;
        }
        KaplanMeier estimate = KaplanMeier.of(times, happened);
        List<Step> steps = estimate.steps().stream()
                .map(step -> new Step(
                        (int) step.time(),
                        step.atRisk(),
                        step.events(),
                        step.share(),
                        step.standardError(),
                        step.low(),
                        step.high()))
                .toList();
        return new Curve(days.length, found, steps, median(estimate, found, asOf));
    }

    private Figure median(KaplanMeier estimate, int pregnant, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "d", asOf)
                .noInterval("too few cows were followed long enough for the far end of an interval");
        if (estimate.cases() == 0) {
            return figure.finding(Finding.of(FindingCode.NOTHING_TO_COUNT).withExpected("cows past the waiting period"))
                    .build();
        }
        if (estimate.median().isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NOT_HALF_PREGNANT)
                            .withSeen(pregnant + " of " + estimate.cases() + " cows"))
                    .build();
        }
        double median = estimate.median().getAsDouble();
        if (estimate.medianLow().isPresent() && estimate.medianHigh().isPresent()) {
            figure.interval(new Interval(
                    COVERAGE,
                    estimate.medianLow().getAsDouble(),
                    estimate.medianHigh().getAsDouble()));
        }
        return figure.value(median)
                .explanation(new Explanation(List.of(new Explanation.Part(
                        pregnant + " of " + estimate.cases() + " cows pregnant, the others followed as far as known",
                        median))))
                .build();
    }

    @Override
    public String id() {
        return "time-to-pregnancy";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Kaplan and Meier",
                1958,
                "J. Am. Stat. Assoc. 53:457-481, product-limit estimate",
                HowKnown.FROM_MEMORY);
    }
}
