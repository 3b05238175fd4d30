package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.util.Pair;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Against Commons Math 3.6.1, Levenberg and Marquardt with exact derivatives, on random points. */
class LinkedLeastSquaresPeerTest {
    private static final long SEED = 1963;

    private static double[] columns(
            double[] t, DoubleUnaryOperator first, DoubleUnaryOperator second, DoubleUnaryOperator third) {
        double[] columns = new double[3 * t.length];
        for (int i = 0; i < t.length; i++) {
            columns[3 * i] = first.applyAsDouble(t[i]);
            columns[3 * i + 1] = second.applyAsDouble(t[i]);
            columns[3 * i + 2] = third.applyAsDouble(t[i]);
        }
        return columns;
    }

    private static LeastSquaresOptimizer.Optimum peer(Link link, double[] columns, double[] y, double[] start) {
        return new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(1e-14)
                .withParameterRelativeTolerance(1e-14)
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .target(y)
                        .model(point -> {
                            double[] f = new double[y.length];
                            double[][] j = new double[y.length][3];
                            for (int i = 0; i < y.length; i++) {
                                double eta = 0;
                                for (int k = 0; k < 3; k++) {
                                    eta += point.getEntry(k) * columns[3 * i + k];
                                }
                                f[i] = link == Link.EXPONENTIAL ? Math.exp(eta) : 1 / eta;
                                double slope = link == Link.EXPONENTIAL ? f[i] : -f[i] * f[i];
                                for (int k = 0; k < 3; k++) {
                                    j[i][k] = slope * columns[3 * i + k];
                                }
                            }
                            return new Pair<>(new ArrayRealVector(f), new Array2DRowRealMatrix(j));
                        })
                        .maxEvaluations(10_000)
                        .maxIterations(10_000)
                        .build());
    }

    @Test
    void exponentialFitsAreThoseOfCommonsMathOrBetter() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 400; draw++) {
            int n = 4 + random.nextInt(9);
            double[] t = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                t[i] = 6 + 28 * i + random.nextInt(20);
                y[i] = Math.max(3, 15 * Math.pow(t[i], 0.2) * Math.exp(-0.004 * t[i]) + 3 * random.nextGaussian());
            }
            double[] columns = columns(t, x -> 1, Math::log, x -> -x);
            double[] theta = new double[3];
            LinkedLeastSquares ours = new LinkedLeastSquares(Link.EXPONENTIAL, columns, y);
            String where = "seed " + SEED + " draw " + draw;

            assertThat(ours.startFromData(theta) && ours.minimize(theta))
                    .as(where)
                    .isTrue();

            LeastSquaresOptimizer.Optimum peer =
                    peer(Link.EXPONENTIAL, columns, y, new double[] {Math.log(15), 0.2, 0.004});
            double peerRss = peer.getCost() * peer.getCost();
            assertThat(ours.rss()).as(where).isLessThanOrEqualTo(peerRss * (1 + 1e-9));
            for (int k = 0; k < 3; k++) {
                double expected = peer.getPoint().getEntry(k);
                assertThat(theta[k]).as(where).isCloseTo(expected, Offset.offset(1e-5 * (0.1 + Math.abs(expected))));
            }
        }
    }

    @Test
    void reciprocalFitsAreThoseOfCommonsMathOrBetter() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 300; draw++) {
            int n = 5 + random.nextInt(8);
            double[] t = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                t[i] = 6 + 28 * i + random.nextInt(20);
                y[i] = t[i] / (0.25 + 0.022 * t[i] + 0.00006 * t[i] * t[i]) + 1.5 * random.nextGaussian();
            }
            double[] columns = columns(t, x -> 1 / x, x -> 1, x -> x);
            double[] theta = new double[3];
            LinkedLeastSquares ours = new LinkedLeastSquares(Link.RECIPROCAL, columns, y);
            String where = "seed " + SEED + " draw " + draw;

            assertThat(ours.startFromData(theta) && ours.minimize(theta))
                    .as(where)
                    .isTrue();

            LeastSquaresOptimizer.Optimum peer = peer(Link.RECIPROCAL, columns, y, new double[] {0.25, 0.022, 0.00006});
            assertThat(ours.rss()).as(where).isCloseTo(peer.getCost() * peer.getCost(), Offset.offset(1e-8));
        }
    }

    @Test
    void fromAnywhereNearItFindsTheSameMinimum() {
        Random random = new Random(SEED);
        double[] t = {12, 40, 71, 99, 130, 160, 190, 221, 250, 280};
        double[] y = {24.1, 28.7, 27.9, 27.2, 24.8, 23.9, 21.4, 19.8, 18.1, 16.6};
        double[] columns = columns(t, x -> 1, Math::log, x -> -x);
        LinkedLeastSquares solver = new LinkedLeastSquares(Link.EXPONENTIAL, columns, y);
        double[] best = new double[3];
        assertThat(solver.startFromData(best) && solver.minimize(best)).isTrue();
        double rss = solver.rss();
        for (int draw = 0; draw < 500; draw++) {
            double[] theta = {1 + 3 * random.nextDouble(), -0.2 + 0.8 * random.nextDouble(), 0.015 * random.nextDouble()
            };
            String where = "seed " + SEED + " draw " + draw;
            assertThat(solver.minimize(theta)).as(where).isTrue();
            assertThat(solver.rss()).as(where).isCloseTo(rss, Offset.offset(1e-11));
            for (int k = 0; k < 3; k++) {
                assertThat(theta[k]).as(where).isCloseTo(best[k], Offset.offset(1e-9));
            }
        }
    }

    @Test
    void theStartIsOneGaussNewtonStepFromTheData() {
        double[] t = {10, 50, 90, 130, 170};
        double[] y = {20, 26, 0, 22, 19};
        double[] columns = columns(t, x -> 1, Math::log, x -> -x);
        double[] theta = new double[3];
        assertThat(new LinkedLeastSquares(Link.EXPONENTIAL, columns, y).startFromData(theta))
                .isTrue();

        // the same by linear least squares on y ln y with rows y z; the point without milk drops out
        double[] design = new double[3 * 4];
        double[] right = new double[4];
        int at = 0;
        for (int i = 0; i < 5; i++) {
            if (y[i] > 0) {
                for (int k = 0; k < 3; k++) {
                    design[k * 4 + at] = y[i] * columns[3 * i + k];
                }
                right[at++] = y[i] * Math.log(y[i]);
            }
        }
        double[] expected = LinearLeastSquares.solve(design, 3, right).coefficients();
        for (int k = 0; k < 3; k++) {
            assertThat(theta[k]).isCloseTo(expected[k], Offset.offset(1e-8));
        }
    }

    @Test
    void aSolverThatHasFittedStartsAfreshFromItsData() {
        double[] y = {20, 26, 25, 22, 19};
        LinkedLeastSquares solver = new LinkedLeastSquares(
                Link.EXPONENTIAL, columns(new double[] {10, 50, 90, 130, 170}, x -> 1, Math::log, x -> -x), y);
        double[] first = new double[3];
        double[] again = new double[3];
        assertThat(solver.startFromData(first)).isTrue();
        assertThat(solver.minimize(first.clone())).isTrue();

        assertThat(solver.startFromData(again)).isTrue();

        assertThat(again).isEqualTo(first);
    }

    @Test
    void aSearchWithoutEndOrWithoutAWayDownIsNoFit() {
        double[] days = {10, 60, 110, 160};
        LinkedLeastSquares noMilk =
                new LinkedLeastSquares(Link.EXPONENTIAL, columns(days, x -> 1, Math::log, x -> -x), new double[4]);
        LinkedLeastSquares oneDay = new LinkedLeastSquares(
                Link.EXPONENTIAL,
                columns(new double[] {50, 50, 50, 50}, x -> 1, Math::log, x -> -x),
                new double[] {20, 21, 22, 23});

        assertThat(noMilk.minimize(new double[] {1, 0.2, 0.004})).isFalse();
        assertThat(oneDay.minimize(new double[] {2.5, 0.2, 0.004})).isFalse();
    }

    @Test
    void derivativesOfTheLinksAreThoseOfSmallSteps() {
        for (Link link : Link.values()) {
            for (double eta : new double[] {0.02, 0.5, 1.7}) {
                double step = 1e-5 * eta;
                double f = link.value(eta);
                double slope = (link.value(eta + step) - link.value(eta - step)) / (2 * step);
                double bend = (link.slope(link.value(eta + step)) - link.slope(link.value(eta - step))) / (2 * step);
                assertThat(link.slope(f))
                        .as("%s %s", link, eta)
                        .isCloseTo(slope, Offset.offset(1e-6 * Math.abs(slope)));
                assertThat(link.bend(f)).as("%s %s", link, eta).isCloseTo(bend, Offset.offset(1e-6 * Math.abs(bend)));
                assertThat(link.etaOf(f)).as("%s %s", link, eta).isCloseTo(eta, Offset.offset(1e-14));
            }
        }
        assertThat(Link.RECIPROCAL.value(0)).isNaN();
    }

    @Test
    void pointsThatDetermineNothingAreRefused() {
        double[] columns = columns(new double[] {50, 50, 50, 50}, x -> 1, Math::log, x -> -x);
        double[] theta = new double[3];

        assertThat(new LinkedLeastSquares(Link.EXPONENTIAL, columns, new double[] {20, 21, 22, 23})
                        .startFromData(theta))
                .isFalse();
        assertThat(new LinkedLeastSquares(Link.EXPONENTIAL, columns, new double[4]).startFromData(theta))
                .isFalse();
    }

    @Test
    void aStartOutsideTheLinkIsRefused() {
        double[] columns = columns(new double[] {10, 60, 110, 160}, x -> 1 / x, x -> 1, x -> x);
        LinkedLeastSquares solver = new LinkedLeastSquares(Link.RECIPROCAL, columns, new double[] {20, 24, 22, 19});

        assertThat(solver.minimize(new double[] {0, -1, 0})).isFalse();
        assertThat(solver.minimize(new double[] {0, 0.05, 0})).isTrue();
    }

    @Test
    void columnsMustFitThePoints() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new LinkedLeastSquares(Link.EXPONENTIAL, new double[5], new double[2]));
    }
}
