package org.pailbook.lactation.projection;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * How far an interval reaches to either side of the projection, learned from projections whose truth is now known.
 *
 * <p>The standard error a model gives is a little too small while tests are few, because its means and spreads are themselves estimates. A
 * factor for each number of tests mends that: {@code sqrt(mean(error^2 / SEP^2))} over completed lactations. Cows are no normal
 * distribution either: with a hundred or more completed lactations the ends are where past errors lay.
 */
public final class IntervalCalibration {
    /** The interval as the model gives it, errors normal. */
    public static final IntervalCalibration NONE = ofFactors(1);

    /**
     * For standards that learned ({@link HerdStandards}): errors normal within the 80 % interval, further out for the 95 % one. Found on 109
     * open lactations, each projected after 1 to 10 tests without its cow: 80 % of the errors lay within 1.26, 95 % within 2.13 standard
     * errors; HerdStandardsOpenDataTest. The 80 % interval keeps the normal 1.28.
     */
    public static final IntervalCalibration OPEN_DATA = new IntervalCalibration(
            new double[] {1},
            new double[][] {{-1.2815515655446004, 1.2815515655446004, -2.13, 2.13}},
            "109 lactations of open data");

    /** Completed lactations from which on the ends are taken from past errors. */
    static final int LEAST_FOR_QUANTILES = 100;

    /** How many lactations a factor of 1 counts as. */
    private static final double LACTATIONS_FOR_NONE = 50;

    /** The same where past errors would make the interval narrower: being too sure is the worse mistake. */
    private static final double LACTATIONS_AGAINST_NARROWING = 200;

    /** How many lactations the ends common to all numbers of tests count as. */
    private static final double LACTATIONS_FOR_COMMON_ENDS = 100;

    private final double[] factors;
    /** by number of tests: low and high of the 80 %, low and high of the 95 % interval, in standard errors before the factor */
    private final double[][] ends;
    /** whose errors; empty if the interval is the model's own */
    private final String learnedFrom;

    private IntervalCalibration(double[] factors, double[][] ends, String learnedFrom) {
        this.factors = factors;
        this.ends = ends;
        this.learnedFrom = learnedFrom;
    }

    /**
     * Normal errors with a wider or narrower standard error.
     *
     * @param factors index is the number of tests, from no test on; the last holds for more; each above 0
     */
    public static IntervalCalibration ofFactors(double... factors) {
        if (factors.length == 0 || !Arrays.stream(factors).allMatch(factor -> factor > 0 && factor < 100)) {
            throw new IllegalArgumentException("factors (" + Arrays.toString(factors) + ") must be above 0");
        }
        return new IntervalCalibration(factors.clone(), new double[][] {normalEnds()}, "");
    }

    /**
     * Learned from past projections. The factor comes from the errors after that number of tests and, with half the weight a step, after its neighbours; it
     * counts as so many lactations as there are, against 50 for a factor of 1, and against 200 where it would narrow. From 100 lactations on the ends are quantiles of the errors of all
     * numbers of tests together, moved towards those of the one number by n against {@value #LACTATIONS_FOR_COMMON_ENDS} lactations; before that they
     * are those of {@link #OPEN_DATA}. So a hundred lactations do not make the width jump from test to test. Rules of ours.
     */
    public static IntervalCalibration learn(List<ProjectionError> errors) {
        int most = errors.stream().mapToInt(ProjectionError::tests).max().orElse(0);
        double[][] z = new double[most + 1][];
        for (int tests = 0; tests <= most; tests++) {
            int stage = tests;
            z[tests] = errors.stream()
                    .filter(error -> error.tests() == stage)
                    .mapToDouble(ProjectionError::standardised)
                    .sorted()
                    .toArray();
        }
        double[] factors = new double[most + 1];
        for (int tests = 0; tests <= most; tests++) {
            int lactations = z[tests].length;
            double own = lactations == 0 ? 1 : smoothedRatio(z, tests);
            double held = own < 1 ? LACTATIONS_AGAINST_NARROWING : LACTATIONS_FOR_NONE;
            factors[tests] = (lactations * own + held) / (lactations + held);
        }
        return new IntervalCalibration(
                factors,
                ends(z, factors),
                errors.size() + " past projections of this herd, and " + OPEN_DATA.learnedFrom);
    }

    private static double smoothedRatio(double[][] z, int tests) {
        double squares = 0;
        double weights = 0;
        for (int other = 0; other < z.length; other++) {
            double weight = Math.pow(0.5, Math.abs(other - tests));
            squares += weight * Arrays.stream(z[other]).map(one -> one * one).sum();
            weights += weight * z[other].length;
        }
        return Math.sqrt(squares / weights);
    }

    private static double[][] ends(double[][] z, double[] factors) {
        int most = Arrays.stream(z).mapToInt(one -> one.length).max().orElse(0);
        double[][] ends = new double[z.length][];
        if (most < LEAST_FOR_QUANTILES) {
            Arrays.fill(ends, OPEN_DATA.ends[0]);
            return ends;
        }
        double[] together = IntStream.range(0, z.length)
                .boxed()
                .flatMapToDouble(tests -> Arrays.stream(z[tests]).map(one -> one / factors[tests]))
                .sorted()
                .toArray();
        double[] common = quantileEnds(together, 1);
        for (int tests = 0; tests < z.length; tests++) {
            int lactations = z[tests].length;
            double[] own = lactations == 0 ? common : quantileEnds(z[tests], factors[tests]);
            ends[tests] = new double[own.length];
            for (int i = 0; i < own.length; i++) {
                ends[tests][i] = (lactations * own[i] + LACTATIONS_FOR_COMMON_ENDS * common[i])
                        / (lactations + LACTATIONS_FOR_COMMON_ENDS);
            }
        }
        return ends;
    }

    private static double[] normalEnds() {
        double inner = Coverage.EIGHTY_PERCENT.normalMultiple();
        double outer = Coverage.NINETY_FIVE_PERCENT.normalMultiple();
        return new double[] {-inner, inner, -outer, outer};
    }

    private static double[] quantileEnds(double[] sorted, double factor) {
        double[] shares = {0.10, 0.90, 0.025, 0.975};
        double[] ends = new double[shares.length];
        for (int i = 0; i < shares.length; i++) {
            ends[i] = quantile(sorted, shares[i]) / factor;
        }
        return ends;
    }

    /** Straight line between order statistics, (n + 1) p: what a new error of the same kind stays below with probability p. */
    static double quantile(double[] sorted, double share) {
        double place = share * (sorted.length + 1) - 1;
        int below = Math.min(sorted.length - 1, Math.max(0, (int) Math.floor(place)));
        int above = Math.min(sorted.length - 1, below + 1);
        double part = Math.min(1, Math.max(0, place - below));
        return sorted[below] + part * (sorted[above] - sorted[below]);
    }

    /** Says whose errors the interval was learned from; empty if it is the model's own. */
    Optional<Finding> finding() {
        return learnedFrom.isEmpty()
                ? Optional.empty()
                : Optional.of(Finding.of(FindingCode.INTERVAL_FROM_PAST_ERRORS).withSeen("errors of " + learnedFrom));
    }

    /** What the standard error is multiplied with after so many tests. */
    public double factor(int tests) {
        return factors[Math.min(tests, factors.length - 1)];
    }

    /** Lower end of an interval less the projection, in standard errors of the model; usually below 0. */
    public double low(int tests, Coverage coverage) {
        return factor(tests) * end(tests, coverage == Coverage.EIGHTY_PERCENT ? 0 : 2);
    }

    /** Upper end of an interval less the projection, in standard errors of the model; usually above 0. */
    public double high(int tests, Coverage coverage) {
        return factor(tests) * end(tests, coverage == Coverage.EIGHTY_PERCENT ? 1 : 3);
    }

    private double end(int tests, int which) {
        return ends[Math.min(tests, ends.length - 1)][which];
    }
}
