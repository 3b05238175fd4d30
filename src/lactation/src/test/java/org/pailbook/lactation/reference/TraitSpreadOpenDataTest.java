package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.OpenTestDays;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.TestDay;

/** How the shipped trait correlations and daily error shares were made, done again on the open test days. */
class TraitSpreadOpenDataTest {
    private static final List<LactationTrait> YIELDS =
            List.of(LactationTrait.MILK, LactationTrait.FAT, LactationTrait.PROTEIN);

    /** Departures of one lactation in standard deviations of its class; by test and trait, NaN where not measured. */
    private record Departures(boolean firstParity, int[] days, double[][] values) {}

    @ParameterizedTest
    @CsvSource({"0, 1, 0.685, 0.807, 0.711", "0, 2, 0.895, 0.929, 0.899", "1, 2, 0.808, 0.710, 0.782"})
    void correlationsOfTraitsComeOutOfTheData(int i, int j, double lasting, double daily, double sameDay) {
        List<double[]> same = new ArrayList<>();
        List<double[]> next = new ArrayList<>();
        for (Departures one : departures()) {
            for (int test = 0; test < one.values().length; test++) {
                double[] today = one.values()[test];
                if (isComplete(today)) {
                    same.add(new double[] {today[i], today[j]});
                }
                if (test > 0 && isComplete(today) && isComplete(one.values()[test - 1])) {
                    double[] before = one.values()[test - 1];
                    next.add(new double[] {before[i], before[j], today[i], today[j]});
                }
            }
        }
        double sameCorrelation = correlation(same, 0, 1);
        double between = (correlation(next, 0, 3) + correlation(next, 1, 2)) / 2;
        double own = Math.sqrt(correlation(next, 0, 2) * correlation(next, 1, 3));
        assertThat(sameCorrelation).isCloseTo(sameDay, within(5e-4));
        assertThat(between / own).isCloseTo(lasting, within(5e-4));
        double[] e = {0.20, 0.24, 0.28};
        double left = sameCorrelation - between / own * Math.sqrt((1 - e[i]) * (1 - e[j]));
        assertThat(left / Math.sqrt(e[i] * e[j])).isCloseTo(daily, within(2e-3));
        assertThat(LactationStandards.traitsForCow("HOL", 1).lasting(i, j))
                .isCloseTo(lasting * Math.sqrt((1 - e[i]) * (1 - e[j])), within(1e-9));
        assertThat(LactationStandards.traitsForCow("HOL", 1).daily(i, j))
                .isCloseTo(daily * Math.sqrt(e[i] * e[j]), within(1e-9));
    }

    @Test
    void cellScoreGoesWithMilkHardlyAtAll() {
        List<double[]> same = new ArrayList<>();
        for (Departures one : departures()) {
            for (double[] today : one.values()) {
                if (!Double.isNaN(today[3])) {
                    same.add(new double[] {today[0], today[3]});
                }
            }
        }
        assertThat(correlation(same, 0, 1)).isCloseTo(0, within(0.05));
    }

    // The likeliest e on a grid, r free on a grid of its own; the shipped value is rounded from there. A flat top:
    // within .05.
    @ParameterizedTest
    @CsvSource({"MILK, 0.20", "FAT, 0.24", "PROTEIN, 0.28", "CELLS, 0.28"})
    void dailyErrorSharesAreNearTheLikeliest(LactationTrait trait, double shipped) {
        double best = Double.NEGATIVE_INFINITY;
        double bestShare = 0;
        List<Departures> departures = departures();
        for (double share = 0.10; share < 0.455; share += 0.025) {
            for (double r : new double[] {0.990, 0.993, 0.995, 0.9965, 0.9975, 0.998, 0.9985}) {
                double logLikelihood = logLikelihood(departures, trait.ordinal(), r, share);
                if (logLikelihood > best) {
                    best = logLikelihood;
                    bestShare = share;
                }
            }
        }
        assertThat(bestShare).isCloseTo(shipped, within(0.05));
    }

    private static double logLikelihood(List<Departures> departures, int trait, double r, double e) {
        double sum = 0;
        for (Departures one : departures) {
            List<Integer> measured = new ArrayList<>();
            for (int test = 0; test < one.days().length; test++) {
                if (!Double.isNaN(one.values()[test][trait])) {
                    measured.add(test);
                }
            }
            int n = measured.size();
            RealMatrix v = new Array2DRowRealMatrix(n, n);
            RealVector d = new ArrayRealVector(n);
            for (int i = 0; i < n; i++) {
                d.setEntry(i, one.values()[measured.get(i)][trait]);
                for (int j = 0; j < n; j++) {
                    int gap = Math.abs(one.days()[measured.get(i)] - one.days()[measured.get(j)]);
                    v.setEntry(i, j, (1 - e) * Math.pow(r, gap) + (i == j ? e : 0));
                }
            }
            CholeskyDecomposition factor = new CholeskyDecomposition(v);
            sum -= (Math.log(factor.getDeterminant())
                            + d.dotProduct(factor.getSolver().solve(d)))
                    / 2;
        }
        return sum;
    }

    private static List<Departures> departures() {
        List<OpenTestDays> all = OpenTestDays.read(SharedData.orSkip());
        Map<String, WilminkClassFit> fits = new HashMap<>();
        List<Departures> departures = new ArrayList<>();
        for (OpenTestDays one : all) {
            boolean first = one.lactation().parity() == 1;
            List<TestDay> tests = one.lactation().testDays();
            int[] days = new int[tests.size()];
            double[][] values = new double[tests.size()][4];
            for (LactationTrait trait : LactationTrait.values()) {
                WilminkClassFit fit = fits.computeIfAbsent(
                        one.breed() + first + trait,
                        unused -> WilminkClassFit.of(
                                all.stream()
                                        .filter(other -> other.isOfClass(one.breed(), first))
                                        .map(OpenTestDays::lactation)
                                        .toList(),
                                trait));
                for (int test = 0; test < days.length; test++) {
                    days[test] = one.lactation().daysInMilk(tests.get(test).date());
                    double value = WilminkClassFit.value(tests.get(test), trait);
                    values[test][trait.ordinal()] = (value - fit.kg(days[test])) / fit.residualSdKg();
                }
            }
            departures.add(new Departures(first, days, values));
        }
        return departures;
    }

    private static boolean isComplete(double[] test) {
        return YIELDS.stream().noneMatch(trait -> Double.isNaN(test[trait.ordinal()]));
    }

    private static double correlation(List<double[]> rows, int i, int j) {
        return new PearsonsCorrelation()
                .correlation(
                        rows.stream().mapToDouble(row -> row[i]).toArray(),
                        rows.stream().mapToDouble(row -> row[j]).toArray());
    }
}
