package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.KaplanMeier;
import org.pailbook.lactation.testday.Lactation;

/** How old heifers are when they first calve, and how many cows come to their third lactation. */
public final class HerdCareers {
    private static final int YEAR_DAYS = 365;
    private static final double DAYS_PER_MONTH = 30.4375;
    private static final int THIRD = 3;
    private static final double PERCENT = 100;
    private static final double COVERAGE = 0.95;

    private final List<Career> careers;
    private final LocalDate asOf;

    /**
     * One cow whose first calving is on record.
     *
     * @param bornOn her birth, if known
     * @param firstCalving the day of it
     * @param parity calvings so far
     * @param hasLeft whether she left the herd and did not come back
     */
    public record Career(Optional<LocalDate> bornOn, LocalDate firstCalving, int parity, boolean hasLeft) {
        public Career {
            Objects.requireNonNull(bornOn, "bornOn");
            Objects.requireNonNull(firstCalving, "firstCalving");
        }

        /** Empty for a heifer, and for a cow whose first calving is not on record. */
        public static Optional<Career> of(CowOnDay cow, Optional<LocalDate> bornOn) {
            return cow.lactations().lactations().stream()
                    .map(one -> one.lactation())
                    .filter(lactation -> lactation.parity() == 1)
                    .map(Lactation::calvingDate)
                    .findFirst()
                    .map(first -> new Career(
                            bornOn,
                            first,
                            cow.lactations().latest().orElseThrow().lactation().parity(),
                            cow.hasLeft()));
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
            if (career.firstCalving().isAfter(asOf.minusDays(YEAR_DAYS))
                    && !career.firstCalving().isAfter(asOf)) {
                calved++;
                career.bornOn()
                        .ifPresent(born ->
                                months.add(ChronoUnit.DAYS.between(born, career.firstCalving()) / DAYS_PER_MONTH));
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
     * Share of cows that come to a third calving, by Kaplan-Meier with the lactation as time: of the cows whose first lactation has
     * ended the share that calved again, times the same of the second. Cows still in a lactation count for those they have ended.
     */
    public Measured stayability() {
        double[] ended = new double[careers.size()];
        boolean[] left = new boolean[careers.size()];
        int third = 0;
        boolean isSecondKnown = false;
        for (int i = 0; i < careers.size(); i++) {
            Career career = careers.get(i);
            left[i] = career.hasLeft() && career.parity() < THIRD;
            ended[i] = left[i] ? career.parity() : Math.min(career.parity(), THIRD) - 1.0;
            isSecondKnown |= ended[i] >= THIRD - 1;
            third += career.parity() >= THIRD ? 1 : 0;
        }
        Figure.Builder figure = Figure.of(HerdMeasures.STAYABILITY_TO_THIRD, "%", asOf)
                .noInterval("no cow left in her first two lactations");
        List<KaplanMeier.Step> steps = KaplanMeier.of(ended, left).steps();
        if (!isSecondKnown) {
            figure.finding(Finding.of(FindingCode.NOTHING_TO_COUNT)
                    .withExpected("cows whose first calving is on record and whose second lactation has ended"));
        } else {
            double share =
                    PERCENT * (steps.isEmpty() ? 1 : steps.get(steps.size() - 1).share());
            if (share > 0 && !steps.isEmpty()) {
                KaplanMeier.Step last = steps.get(steps.size() - 1);
                figure.interval(new Interval(COVERAGE, PERCENT * last.low(), PERCENT * last.high()));
            }
            figure.value(share)
                    .explanation(new Explanation(List.of(new Explanation.Part(
                            third + " of " + careers.size() + " came to it so far, the others as far as known",
                            share))));
            if (new Proportion(third, careers.size()).isFew()) {
                figure.finding(Finding.of(FindingCode.SMALL_NUMBER).withSeen(third + " of " + careers.size()));
            }
        }
        return new Measured(HerdMeasures.STAYABILITY_TO_THIRD, third, careers.size(), figure.build());
    }
}
