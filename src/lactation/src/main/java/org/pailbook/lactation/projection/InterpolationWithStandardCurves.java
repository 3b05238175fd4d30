package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.Lactation;

/**
 * Interpolation with standard lactation curves: daily yields are derived for fixed days from the test before and the test after, along the
 * group's mean curve, and measured and derived days are summed by straight pieces.
 *
 * <p>{@code y_i = g_i + b1 (y_j - g_j) + b2 (y_k - g_k)} between tests j and k, {@code y_i = g_i + b (y_j - g_j)} before the first and after the
 * last; the b follow from the covariances of the days, so this is best prediction from two neighbours. Sum: {@code (INT - 1) / 2 y_i + (INT + 1) / 2
 * y_(i+1)} over the pieces, which is the exact sum of the straight line's days. Fixed days 10, 30, 50, ... 290, and day 1, at which our
 * standards begin (ours; the guideline is remembered to begin with day 0). Each yield is interpolated from its own tests.
 *
 * @see "Wilmink, J. B. M. (1987). Livest. Prod. Sci. 16:335-348 (from memory); ICAR Guidelines Section 2, Procedure 2 (from memory)"
 */
public final class InterpolationWithStandardCurves implements YieldAccumulation {
    private static final int FIRST_FIXED_DAY = 10;
    private static final int FIXED_DAYS_STEP = 20;

    private final TraitStandards standards;

    /** @param standards of the cow's breed and parity; how traits go together is not used */
    public InterpolationWithStandardCurves(TraitStandards standards) {
        this.standards = Objects.requireNonNull(standards, "standards");
    }

    @Override
    public AccumulatedYield accumulate(Lactation lactation, LocalDate asOf) {
        ToDate toDate =
                new ToDate(this, lactation, asOf, standards, standards.first().lastDay());
        return toDate.yield(standards.traits(), trait -> figure(toDate, trait));
    }

    private Figure figure(ToDate toDate, int trait) {
        TreeMap<Integer, Double> measured = new TreeMap<>();
        for (int record = 0; record < toDate.records.count(); record++) {
            if (toDate.records.trait(record) == trait) {
                measured.put(toDate.records.day(record), toDate.records.value(record));
            }
        }
        if (measured.isEmpty() || !toDate.hasTests()) {
            return toDate.blocked(Finding.of(
                    switch (standards.traits().get(trait)) {
                        case FAT -> FindingCode.FAT_NEEDED;
                        case PROTEIN -> FindingCode.PROTEIN_NEEDED;
                        default -> FindingCode.NO_TEST_DAYS;
                    }));
        }
        List<Explanation.Part> parts = new ArrayList<>();
        LactationStandard standard = standards.standard(trait);
        int fromDay = 1;
        double from = derived(1, measured, standard);
        parts.add(new Explanation.Part("day 1: " + Rounding.halfUp(from, 3) + " kg", from));
        double sum = from;
        while (fromDay < toDate.toDay) {
            int toDay = nextDay(fromDay, toDate.toDay, measured);
            double to = derived(toDay, measured, standard);
            int interval = toDay - fromDay;
            double kg = (interval - 1) / 2.0 * from + (interval + 1) / 2.0 * to;
            parts.add(new Explanation.Part(
                    "days " + (fromDay + 1) + " to " + toDay + ": " + (interval - 1) / 2.0 + " x "
                            + Rounding.halfUp(from, 3) + " + " + (interval + 1) / 2.0 + " x " + Rounding.halfUp(to, 3)
                            + " kg",
                    kg));
            sum += kg;
            fromDay = toDay;
            from = to;
        }
        List<Finding> findings = new ArrayList<>(standard.findings());
        toDate.addMissing(findings, standards.traits().get(trait), trait);
        return toDate.figure(sum, new Explanation(parts), findings, "this method gives no error of its own");
    }

    /** The next measured or fixed day, or the last day summed. */
    private static int nextDay(int day, int toDay, TreeMap<Integer, Double> measured) {
        int fixed = day < FIRST_FIXED_DAY
                ? FIRST_FIXED_DAY
                : FIRST_FIXED_DAY + FIXED_DAYS_STEP * ((day - FIRST_FIXED_DAY) / FIXED_DAYS_STEP + 1);
        Integer test = measured.higherKey(day);
        return Math.min(toDay, test == null ? fixed : Math.min(fixed, test));
    }

    /** A day's yield from the tests before and after it; a measured day is as measured. */
    static double derived(int day, TreeMap<Integer, Double> measured, LactationStandard standard) {
        Integer before = measured.floorKey(day);
        Integer after = measured.ceilingKey(day);
        if (before != null && before.equals(after)) {
            return measured.get(day);
        }
        DailySpread spread = standard.spread();
        double mean = standard.meanKg(day);
        if (before == null || after == null) {
            int test = before == null ? after : before;
            double b = spread.covariance(day, test) / spread.covariance(test, test);
            return mean + b * (measured.get(test) - standard.meanKg(test));
        }
        double varianceBefore = spread.covariance(before, before);
        double varianceAfter = spread.covariance(after, after);
        double together = spread.covariance(before, after);
        double withBefore = spread.covariance(day, before);
        double withAfter = spread.covariance(day, after);
        double determinant = varianceBefore * varianceAfter - together * together;
        double b1 = (withBefore * varianceAfter - withAfter * together) / determinant;
        double b2 = (withAfter * varianceBefore - withBefore * together) / determinant;
        return mean
                + b1 * (measured.get(before) - standard.meanKg(before))
                + b2 * (measured.get(after) - standard.meanKg(after));
    }

    @Override
    public String id() {
        return "interpolation-standard-curves";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "ICAR",
                2020,
                "Guidelines Section 2, Procedure 2: interpolation using standard lactation curves, after Wilmink 1987",
                HowKnown.FROM_MEMORY);
    }
}
