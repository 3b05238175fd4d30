package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.KaplanMeier;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;

/** How old heifers are when they first calve, and how many cows come to their third lactation. */
public final class HerdCareers {
    private static final int YEAR_DAYS = 365;
    private static final double DAYS_PER_MONTH = 30.4375;
    private static final int THIRD = 3;
    private static final int DAYS_TO_TELL = 600;
    private static final double PERCENT = 100;
    private static final double COVERAGE = 0.95;

    private final List<Career> careers;
    private final LocalDate asOf;

    /**
     * One cow.
     *
     * @param bornOn her birth, if known
     * @param calvings days of her calvings by parity
     * @param hasLeft whether she left the herd and did not come back
     */
    public record Career(Optional<LocalDate> bornOn, Map<Integer, LocalDate> calvings, boolean hasLeft) {
        public Career {
            Objects.requireNonNull(bornOn, "bornOn");
            calvings = Map.copyOf(calvings);
        }

        public static Career of(CowOnDay cow, Optional<LocalDate> bornOn) {
            return new Career(
                    bornOn,
                    cow.lactations().lactations().stream()
                            .map(AssembledLactation::lactation)
                            .collect(Collectors.toMap(
                                    Lactation::parity, Lactation::calvingDate, (first, second) -> second)),
                    cow.hasLeft());
        }
    }

    private HerdCareers(List<Career> careers, LocalDate asOf) {
        this.careers = List.copyOf(careers);
        this.asOf = asOf;
    }

    public static HerdCareers of(List<Career> careers, LocalDate asOf) {
        return new HerdCareers(careers, asOf);
    }

    /** Median months from birth to the first calving, of first calvings of the last 365 days. */
    public Measured ageAtFirstCalving() {
        List<Double> months = new ArrayList<>();
        int calved = 0;
        for (Career career : careers) {
            LocalDate first = career.calvings().get(1);
            if (first != null && first.isAfter(asOf.minusDays(YEAR_DAYS)) && !first.isAfter(asOf)) {
                calved++;
                career.bornOn().ifPresent(born -> months.add(ChronoUnit.DAYS.between(born, first) / DAYS_PER_MONTH));
            }
        }
        Figure.Builder figure = Figure.of(HerdMeasures.AGE_AT_FIRST_CALVING, "months", asOf)
                .noInterval("of the heifers there were; nothing is claimed of others");
        if (months.isEmpty()) {
            figure.finding(Finding.of(FindingCode.NOTHING_TO_COUNT)
                    .withExpected(HerdMeasures.AGE_AT_FIRST_CALVING.numerator()));
        } else {
            double median = median(months);
            figure.value(median)
                    .explanation(new Explanation(
                            List.of(new Explanation.Part("median of " + months.size() + " first calvings", median))));
        }
        return new Measured(HerdMeasures.AGE_AT_FIRST_CALVING, months.size(), calved, figure.build());
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(half) : (sorted.get(half - 1) + sorted.get(half)) / 2;
    }

    /**
     * Share of cows that come from a first to a third calving: of the first lactations the share that was followed by a calving, times the
     * same of the second. Counted are lactations that began {@value #DAYS_TO_TELL} days ago or earlier (ours): of younger ones an exit is
     * known sooner than the next calving. Cows that have done neither by then take no part.
     */
    public Measured stayability() {
        int[] atRisk = new int[THIRD - 1];
        int[] left = new int[THIRD - 1];
        LocalDate latest = asOf.minusDays(DAYS_TO_TELL);
        for (Career career : careers) {
            for (int parity = 1; parity < THIRD; parity++) {
                LocalDate calved = career.calvings().get(parity);
                boolean isFollowed = career.calvings().containsKey(parity + 1);
                if (calved != null && !calved.isAfter(latest) && (isFollowed || career.hasLeft())) {
                    atRisk[parity - 1]++;
                    left[parity - 1] += isFollowed ? 0 : 1;
                }
            }
        }
        int ended = atRisk[0] + atRisk[1];
        int followed = ended - left[0] - left[1];
        Figure.Builder figure = Figure.of(HerdMeasures.STAYABILITY_TO_THIRD, "%", asOf)
                .noInterval("no cow left, or none stayed: nothing to tell an interval from");
        if (atRisk[0] == 0 || atRisk[1] == 0) {
            figure.finding(Finding.of(FindingCode.NOTHING_TO_COUNT)
                    .withExpected("first and second lactations that began " + DAYS_TO_TELL + " days ago and ended"));
        } else {
            KaplanMeier.Step last = KaplanMeier.lastOfCounts(atRisk, left);
            double share = PERCENT * last.share();
            if (last.share() > 0 && last.share() < 1) {
                figure.interval(new Interval(COVERAGE, PERCENT * last.low(), PERCENT * last.high()));
            }
            figure.value(share)
                    .explanation(new Explanation(List.of(new Explanation.Part(
                            words(atRisk[0], left[0]) + " first and " + words(atRisk[1], left[1])
                                    + " second lactations were followed by a calving",
                            share))));
            if (Math.min(atRisk[0], atRisk[1]) < Proportion.FEW) {
                figure.finding(Finding.of(FindingCode.SMALL_NUMBER).withSeen(words(atRisk[1], left[1])));
            }
        }
        return new Measured(HerdMeasures.STAYABILITY_TO_THIRD, followed, ended, figure.build());
    }

    private static String words(int all, int left) {
        return (all - left) + " of " + all;
    }
}
