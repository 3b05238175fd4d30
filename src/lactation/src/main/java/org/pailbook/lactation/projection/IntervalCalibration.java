package org.pailbook.lactation.projection;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * How far an interval reaches to either side of the projection, learned from projections whose truth is now known.
 *
 * <p>The standard error a model gives is a little too small while tests are few, because its means and spreads are themselves estimates. A
 * factor for each number of tests mends that: {@code sqrt(mean(error^2 / SEP^2))} over completed lactations. Cows are no normal
 * distribution either: with a hundred or more completed lactations the ends move towards where past errors lay.
 */
public final class IntervalCalibration {
    /** Shares of errors below the four ends. */
    private static final double[] SHARES = {0.10, 0.90, 0.025, 0.975};

    /** Quantiles of Student's t with 10 degrees of freedom, 1.3722 and 2.2281 (any table), times sqrt(8 / 10), times 1.13. */
    private static final double[] ENDS_FOR_FEW = {-1.3869, 1.3869, -2.2520, 2.2520};

    /** The same with 8 degrees of freedom, 1.3968 and 2.3060, times sqrt(6 / 8). */
    private static final double[] ENDS_FOR_MANY = {-1.2097, 1.2097, -1.9971, 1.9971};

    /** The interval as the model gives it, errors normal. */
    public static final IntervalCalibration NONE = ofFactors(1);

    /**
     * For standards that learned ({@link HerdStandards}). Two things a model does not tell of itself are in it.
     *
     * <p>Width: how fast a cow's departures fade decides how much tests tell of the rest, and it is known least. With the published r .995 in place of
     * .998 the standard error is up to 1.15 times as large, most after 5 tests, and 1.02 times after 10. So it is taken 1.13 times up to {@value
     * #FEW_TESTS} tests, where level and spread are estimates too, as it is from {@value #MANY_TESTS} tests on, straight between. Tails: cows fall ill or are weighed
     * wrongly; the errors are Student's t, its variance brought to 1, with 10 degrees of freedom for few tests and 8 for many, where a single odd day is most of what
     * is left. These numbers are ours, set on 109 open lactations, each projected without its cow; {@code HerdStandardsOpenDataTest}. Were the model true
     * with normal errors, 80 % intervals would hold 83 % of the truths with few tests and 77 % with many: that is the price of not knowing it.
     */
    public static final IntervalCalibration OPEN_DATA = new IntervalCalibration(
            new double[] {1}, openDataEnds(), Optional.of(Sentence.of(SentenceCode.ERRORS_OF_OPEN_DATA)));

    /** Completed lactations from which on the ends are taken from past errors. */
    static final int LEAST_FOR_QUANTILES = 100;

    /** How many lactations a factor of 1 counts as. */
    private static final double LACTATIONS_FOR_NONE = 50;

    /** The same where past errors would make the interval narrower: being too sure is the worse mistake. */
    private static final double LACTATIONS_AGAINST_NARROWING = 200;

    /** How many lactations the shipped ends count as beside the herd's errors of all numbers of tests. */
    private static final double LACTATIONS_FOR_SHIPPED_ENDS = 500;

    /** How many lactations the ends common to all numbers of tests count as beside those of one. */
    private static final double LACTATIONS_FOR_COMMON_ENDS = 1000;

    private static final int FEW_TESTS = 5;
    private static final int MANY_TESTS = 8;

    private final double[] factors;
    /** by number of tests: low and high of the 80 %, low and high of the 95 % interval, in standard errors before the factor */
    private final double[][] ends;
    /** whose errors; empty if the interval is the model's own */
    private final Optional<Sentence> learnedFrom;

    private IntervalCalibration(double[] factors, double[][] ends, Optional<Sentence> learnedFrom) {
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
        return new IntervalCalibration(factors.clone(), new double[][] {normalEnds()}, Optional.empty());
    }

    /**
     * Learned from past projections. The factor comes from the errors after that number of tests and, with half the weight a step, after its neighbours; it
     * counts as so many lactations as there are, against 50 for a factor of 1, and against 200 where it would narrow. The ends are those of {@link #OPEN_DATA}.
     * From 100 lactations on they are multiplied with what quantiles of the herd's errors, as multiples of them, say: of all numbers of tests together, against
     * {@value #LACTATIONS_FOR_SHIPPED_ENDS} lactations for 1, and those of the one number against {@value #LACTATIONS_FOR_COMMON_ENDS} for these. A quantile of a hundred
     * errors is off by a sixth of a standard error, more than herds differ: with less held back the shares inside jumped from test to test. Rules of ours.
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
                factors, ends(z, factors), Optional.of(Sentence.of(SentenceCode.ERRORS_OF_HERD, errors.size())));
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
        double[][] shipped = OPEN_DATA.ends;
        double[][] ends = new double[Math.max(z.length, shipped.length)][];
        for (int tests = 0; tests < ends.length; tests++) {
            ends[tests] = shipped[Math.min(tests, shipped.length - 1)].clone();
        }
        for (int i = 0; i < SHARES.length && most >= LEAST_FOR_QUANTILES; i++) {
            double[][] multiples = multiples(z, factors, ends, i);
            double[] together = Arrays.stream(multiples)
                    .flatMapToDouble(Arrays::stream)
                    .sorted()
                    .toArray();
            double common = held(quantile(together, SHARES[i]), most, 1, LACTATIONS_FOR_SHIPPED_ENDS, i);
            for (int tests = 0; tests < ends.length; tests++) {
                int lactations = tests < z.length ? z[tests].length : 0;
                ends[tests][i] *= lactations == 0
                        ? common
                        : held(
                                quantile(multiples[tests], SHARES[i]),
                                lactations,
                                common,
                                LACTATIONS_FOR_COMMON_ENDS,
                                i);
            }
        }
        return ends;
    }

    /** Errors as multiples of the size of a shipped end, sorted as they were. */
    private static double[][] multiples(double[][] z, double[] factors, double[][] shipped, int end) {
        double[][] multiples = new double[z.length][];
        for (int tests = 0; tests < z.length; tests++) {
            double size = factors[tests] * Math.abs(shipped[tests][end]);
            multiples[tests] = Arrays.stream(z[tests]).map(one -> one / size).toArray();
        }
        return multiples;
    }

    /** A low end's own quantile lies below 0, and is told as a multiple above 0 like that of a high end. */
    private static double held(double quantile, int lactations, double against, double held, int end) {
        double own = SHARES[end] < 0.5 ? -quantile : quantile;
        return (lactations * own + held * against) / (lactations + held);
    }

    private static double[][] openDataEnds() {
        double[][] ends = new double[MANY_TESTS + 1][];
        for (int tests = 0; tests < ends.length; tests++) {
            double towardsMany = Math.max(0, tests - FEW_TESTS) / (double) (MANY_TESTS - FEW_TESTS);
            ends[tests] = new double[SHARES.length];
            for (int i = 0; i < SHARES.length; i++) {
                ends[tests][i] = ENDS_FOR_FEW[i] + towardsMany * (ENDS_FOR_MANY[i] - ENDS_FOR_FEW[i]);
            }
        }
        return ends;
    }

    private static double[] normalEnds() {
        double inner = Coverage.EIGHTY_PERCENT.normalMultiple();
        double outer = Coverage.NINETY_FIVE_PERCENT.normalMultiple();
        return new double[] {-inner, inner, -outer, outer};
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
        return learnedFrom.map(
                from -> Finding.of(FindingCode.INTERVAL_FROM_PAST_ERRORS).withSeen(from));
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
