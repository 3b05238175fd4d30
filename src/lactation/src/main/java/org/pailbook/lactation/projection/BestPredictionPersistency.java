package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Does she hold her milk better than her group? Persistency by best prediction, made uncorrelated with the yield itself.
 *
 * <p>{@code pers = q' V K' Vm^-1 (ym - K mu)}, {@code q_t = t - d0}, days 1 to 305; {@code d0 = (1'V t) / (1'V 1)} takes the level out (153 with a constant
 * spread). Divided by {@code sqrt(q'V q)}: 0 is her group's mean, 1 is one standard deviation more milk late and less early. Given from
 * four tests and a reliability of .30 on; limits of ours.
 *
 * @see "VanRaden, P. M. (1998). Proc. 6th WCGALP 23:347-350; Cole, J. B., VanRaden, P. M. (2006). J. Dairy Sci. 89:2722-2728 (abstract read)"
 */
public final class BestPredictionPersistency implements PublishedMethod {
    /** Fewer tests give no value; ours. */
    public static final int LEAST_TESTS = 4;

    /** A lower reliability gives no value; ours. */
    public static final double LEAST_RELIABILITY_SHARE = 0.3;

    private static final int DAYS = DaysInMilk.STANDARD_LACTATION_DAYS;
    private static final Citation CITATION = new Citation(
            "Cole, J. B., VanRaden, P. M.", 2006, "J. Dairy Sci. 89:2722-2728, after VanRaden 1998", HowKnown.READ);

    /**
     * What the tests say of her persistency.
     *
     * @param rawKgDays sum of expected departures times days from the balance day, kg times days
     * @param standardised in standard deviations of her group
     * @param reliabilityShare 0 without a test
     */
    public record Persistency(double rawKgDays, double standardised, double reliabilityShare, Figure figure) {}

    /**
     * Persistency of a lactation's milk as of a day.
     *
     * @return always numbers; its figure, without unit ({@code SD}), has a value only if the tests suffice
     */
    public Persistency of(Lactation lactation, LactationStandard standard, LocalDate asOf) {
        UsableTests usable = UsableTests.of(lactation, asOf);
        DailySpread spread = standard.spread();
        int n = 0;
        while (n < usable.count() && usable.daysInMilk(n) <= standard.lastDay()) {
            n++;
        }
        double balanceDay = balanceDay(spread);
        double variance = variance(spread, balanceDay);
        double[] covariance = new double[n];
        double[] lower = new double[n * (n + 1) / 2];
        for (int i = 0; i < n; i++) {
            covariance[i] = covariance(spread, balanceDay, usable.daysInMilk(i));
            for (int j = 0; j <= i; j++) {
                lower[Cholesky.at(i, j)] = spread.covariance(usable.daysInMilk(i), usable.daysInMilk(j));
            }
        }
        double[] weights = covariance.clone();
        Cholesky.factorInPlace(lower, n).solveInPlace(weights);
        double sd = Math.sqrt(variance);
        double raw = 0;
        double explained = 0;
        List<Explanation.Part> parts = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double deviation = usable.milkKg(i) - standard.meanKg(usable.daysInMilk(i));
            raw += weights[i] * deviation;
            explained += weights[i] * covariance[i];
            parts.add(new Explanation.Part(
                    String.format(
                            Locale.ROOT,
                            "test on %s, day %d: %+.2f kg x %.3g",
                            usable.tests().get(i).date(),
                            usable.daysInMilk(i),
                            deviation,
                            weights[i] / sd),
                    weights[i] * deviation / sd));
        }
        double reliability = explained / variance;
        Figure figure = figure(usable, standard, asOf, n, raw / sd, reliability, new Explanation(parts));
        return new Persistency(raw, raw / sd, reliability, figure);
    }

    private Figure figure(
            UsableTests usable,
            LactationStandard standard,
            LocalDate asOf,
            int tests,
            double value,
            double reliability,
            Explanation explanation) {
        List<Finding> findings = new ArrayList<>(usable.findings());
        findings.addAll(standard.findings());
        if (tests < LEAST_TESTS) {
            findings.add(Finding.of(FindingCode.TOO_FEW_TESTS)
                    .withSeen(tests + " test days")
                    .withExpected("at least " + LEAST_TESTS));
        } else if (reliability < LEAST_RELIABILITY_SHARE) {
            findings.add(Finding.of(FindingCode.TOO_FEW_TESTS)
                    .withSeen(String.format(Locale.ROOT, "reliability %.2f", reliability))
                    .withExpected("reliability of at least " + LEAST_RELIABILITY_SHARE));
        }
        Figure.Builder figure =
                Figure.of(this, "SD", asOf).inputs(usable.inputs()).findings(findings);
        if (findings.stream().noneMatch(finding -> finding.severity() == Severity.BLOCKS)) {
            figure.value(value).explanation(explanation).noInterval("see its reliability");
        }
        return figure.build();
    }

    /** d0: the day around which more early and less late leaves the total as it is. */
    static double balanceDay(DailySpread spread) {
        double sum = 0;
        for (int day = 1; day <= DAYS; day++) {
            sum += day * spread.covarianceWithTotal(day, DAYS);
        }
        return sum / spread.varianceOfTotal(DAYS);
    }

    /** q'Vq. */
    static double variance(DailySpread spread, double balanceDay) {
        double sum = 0;
        for (int day = 1; day <= DAYS; day++) {
            sum += (day - balanceDay) * covariance(spread, balanceDay, day);
        }
        return sum;
    }

    private static double covariance(DailySpread spread, double balanceDay, int testDay) {
        double sum = 0;
        for (int day = 1; day <= DAYS; day++) {
            sum += (day - balanceDay) * spread.covariance(testDay, day);
        }
        return sum;
    }

    @Override
    public String id() {
        return "best-prediction-persistency";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return CITATION;
    }
}
