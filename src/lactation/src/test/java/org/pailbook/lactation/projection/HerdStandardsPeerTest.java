package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * Against selection index theory written out with dense matrices of Commons Math: all tests of the herd at once, {@code V = Z G Z' + R}, mean of
 * the group = reference + {@code K G Z' V^-1 d}, its error {@code K G K' - K G Z' V^-1 Z G K'}.
 */
class HerdStandardsPeerTest {
    private static final long SEED = 1973;
    private static final String[] BREEDS = {"HOL", "HOL", "JER"};
    private static final int[] PARITIES = {1, 3, 1};

    private record Test1(int lactation, int group, int day, double deviation) {}

    @Test
    void learnedMeanAndItsErrorEqualTheDenseFormula() {
        Random random = new Random(SEED);
        List<HerdLactation> history = new ArrayList<>();
        List<Test1> tests = new ArrayList<>();
        for (int i = 0; i < 18; i++) {
            int group = i % 3;
            LactationStandard reference =
                    LactationStandards.refinedForCow(BREEDS[group], PARITIES[group], LactationTrait.MILK);
            int count = 1 + random.nextInt(6);
            double[] daysAndKg = new double[2 * count];
            for (int t = 0; t < count; t++) {
                int day = 8 + 40 * t + random.nextInt(20);
                daysAndKg[2 * t] = day;
                daysAndKg[2 * t + 1] = reference.meanKg(day) + 4 + 3 * random.nextGaussian();
                tests.add(new Test1(
                        i,
                        group,
                        day,
                        (daysAndKg[2 * t + 1] - reference.meanKg(day))
                                / reference.spread().sdPerDay(day)));
            }
            Lactation any = WorkedCow.withTests(daysAndKg);
            List<TestDay> days = any.testDays();
            history.add(new HerdLactation(
                    "cow " + i, BREEDS[group], Lactation.inMilk(PARITIES[group], WorkedCow.CALVING, days)));
        }
        HerdStandards herd = HerdStandards.learn(history, SimulatedHerd.LATER);
        compare(tests, herd.forCow("new", "JER", 1, LactationTrait.MILK), 2, -1);
        // cow 4 is of group 1; her own lactation is left out
        compare(tests, herd.forCow("cow 4", "HOL", 2, LactationTrait.MILK), 1, 4);
    }

    private static void compare(List<Test1> all, LactationStandard learned, int group, int without) {
        List<Test1> tests =
                all.stream().filter(test -> test.lactation() != without).toList();
        int n = tests.size();
        double[] herdSd = HerdStandards.Rules.OURS.herdSd();
        double[] groupSd = HerdStandards.Rules.OURS.groupSd();
        RealMatrix g = MatrixUtils.createRealDiagonalMatrix(new double[16]);
        for (int i = 0; i < 16; i++) {
            double sd = i < 4 ? herdSd[i] : groupSd[i % 4];
            g.setEntry(i, i, sd * sd);
        }
        RealMatrix z = new Array2DRowRealMatrix(n, 16);
        RealMatrix r = new Array2DRowRealMatrix(n, n);
        RealVector d = new ArrayRealVector(n);
        for (int i = 0; i < n; i++) {
            Test1 one = tests.get(i);
            d.setEntry(i, one.deviation());
            double[] x = shapes(one.day());
            for (int k = 0; k < 4; k++) {
                z.setEntry(i, k, x[k]);
                z.setEntry(i, 4 + 4 * one.group() + k, x[k]);
            }
            for (int j = 0; j < n; j++) {
                Test1 other = tests.get(j);
                double lasting = 0.82 * Math.pow(0.998, Math.abs(pace(one.day()) - pace(other.day())));
                r.setEntry(i, j, one.lactation() != other.lactation() ? 0 : lasting + (i == j ? 0.18 : 0));
            }
        }
        RealMatrix inverse = new LUDecomposition(
                        z.multiply(g).multiply(z.transpose()).add(r))
                .getSolver()
                .getInverse();
        RealMatrix k = new Array2DRowRealMatrix(4, 16);
        for (int i = 0; i < 4; i++) {
            k.setEntry(i, i, 1);
            k.setEntry(i, 4 + 4 * group + i, 1);
        }
        RealMatrix kgz = k.multiply(g).multiply(z.transpose());
        RealVector coefficients = kgz.operate(inverse.operate(d));
        RealMatrix error = k.multiply(g)
                .multiply(k.transpose())
                .subtract(kgz.multiply(inverse).multiply(kgz.transpose()));
        LactationStandard reference =
                LactationStandards.refinedForCow(BREEDS[group], PARITIES[group], LactationTrait.MILK);
        double sd = reference.spread().sdPerDay(1);
        for (int day : new int[] {5, 60, 150, 305}) {
            RealVector x = new ArrayRealVector(shapes(day));
            assertThat(learned.meanKg(day))
                    .isCloseTo(reference.meanKg(day) + sd * x.dotProduct(coefficients), within(1e-9));
            assertThat(learned.meanUncertainty().orElseThrow().between(shapes(day), shapes(day)))
                    .isCloseTo(sd * sd * x.dotProduct(error.operate(x)), within(1e-9));
        }
    }

    // best prediction with the mean's error as part of V, written literally
    @Test
    void projectionFromALearnedStandardEqualsTheFullMatrixFormula() {
        List<HerdLactation> history = List.of(
                new HerdLactation("a", "HOL", WorkedCow.withTests(20, 40, 60, 44, 100, 37)),
                new HerdLactation("b", "HOL", WorkedCow.withTests(33, 35, 160, 30)));
        LactationStandard standard =
                HerdStandards.learn(history, SimulatedHerd.LATER).forCow("c", "HOL", 2, LactationTrait.MILK);
        int[] day = {17, 48, 80, 310};
        double[] kg = {38, 41, 35, 20};
        int last = 310;
        RealMatrix v = new Array2DRowRealMatrix(last, last);
        for (int t = 1; t <= last; t++) {
            for (int s = 1; s <= last; s++) {
                double lasting = 0.82 * Math.pow(0.998, Math.abs(pace(t) - pace(s))) + (t == s ? 0.18 : 0);
                double own = standard.spread().sdPerDay(t) * standard.spread().sdPerDay(s) * lasting;
                double mean = standard.meanUncertainty().orElseThrow().between(shapes(t), shapes(s));
                v.setEntry(t - 1, s - 1, own + mean);
            }
        }
        RealVector ones = new ArrayRealVector(last);
        double total = 0;
        for (int t = 1; t <= 305; t++) {
            ones.setEntry(t - 1, 1);
            total += standard.meanKg(t);
        }
        RealMatrix k = new Array2DRowRealMatrix(4, last);
        RealVector d = new ArrayRealVector(4);
        for (int i = 0; i < 4; i++) {
            k.setEntry(i, day[i] - 1, 1);
            d.setEntry(i, kg[i] - standard.meanKg(day[i]));
        }
        RealVector c = k.operate(v.operate(ones));
        RealVector w = new LUDecomposition(k.multiply(v).multiply(k.transpose()))
                .getSolver()
                .solve(c);
        Projection305 projection = WorkedCow.project(standard, 17, 38, 48, 41, 80, 35, 310, 20);
        assertThat(projection.milk305Kg()).isCloseTo(total + w.dotProduct(d), within(1e-7));
        double error = Math.sqrt(ones.dotProduct(v.operate(ones)) - w.dotProduct(c));
        assertThat(projection.standardErrorKg()).isCloseTo(error, within(1e-7));
        double[] left = new double[4];
        for (int t = 1; t <= 305; t++) {
            for (int i = 0; i < 4; i++) {
                left[i] += shapes(t)[i];
            }
        }
        for (int test = 0; test < 4; test++) {
            for (int i = 0; i < 4; i++) {
                left[i] -= w.getEntry(test) * shapes(day[test])[i];
            }
        }
        assertThat(projection.sharedHerdErrorKg())
                .isCloseTo(Math.sqrt(standard.meanUncertainty().orElseThrow().between(left, left)), within(1e-7));
        assertThat(projection.sharedHerdErrorKg()).isLessThan(error);
    }

    // selection index on the cow's two earlier lactations and her tests at once: days of different lactations go
    // together by .35 of the variance
    @Test
    void aCowsPastEntersAsIfAllHerTestsWereProjectedTogether() {
        double[][] past = {{25, 33, 66, 35, 140, 28}, {15, 42, 90, 43, 200, 33, 260, 29}};
        List<HerdLactation> history = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Lactation dated = WorkedCow.withTests(past[i]);
            LocalDate calving = WorkedCow.CALVING.minusDays(800 - 400 * i);
            List<TestDay> tests = dated.testDays().stream()
                    .map(test -> TestDay.ofMilk(
                            calving.plusDays(dated.daysInMilk(test.date())),
                            test.milkKg().orElseThrow()))
                    .toList();
            history.add(new HerdLactation("her", "HOL", Lactation.inMilk(1 + i, calving, tests)));
        }
        HerdStandards herd = HerdStandards.learn(history, SimulatedHerd.LATER);
        double[] now = {20, 45, 50, 47};
        LactationStandard known = herd.forCowWithHerPast("her", "HOL", 3, WorkedCow.CALVING, LactationTrait.MILK);
        assertThat(known.findings()).extracting(Finding::code).containsExactly(FindingCode.OWN_EARLIER_LACTATIONS);
        Projection305 projection = WorkedCow.project(known, now);

        List<double[]> all = new ArrayList<>();
        for (int lactation = 0; lactation < 3; lactation++) {
            double[] tests = lactation < 2 ? past[lactation] : now;
            LactationStandard group = herd.forCow("her", "HOL", lactation + 1, LactationTrait.MILK);
            for (int i = 0; i < tests.length; i += 2) {
                int day = (int) tests[i];
                double sd = group.spread().sdPerDay(day);
                all.add(new double[] {lactation, day, (tests[i + 1] - group.meanKg(day)) / sd});
            }
        }
        LactationStandard group = herd.forCow("her", "HOL", 3, LactationTrait.MILK);
        double sd = group.spread().sdPerDay(1);
        int n = all.size();
        RealMatrix v = new Array2DRowRealMatrix(n, n);
        RealVector c = new ArrayRealVector(n);
        RealVector d = new ArrayRealVector(n);
        double variance = 0;
        for (int t = 1; t <= 305; t++) {
            for (int s = 1; s <= 305; s++) {
                variance += correlation(t, s) + mean(group, t, s) / (sd * sd);
            }
        }
        for (int i = 0; i < n; i++) {
            double[] one = all.get(i);
            d.setEntry(i, one[2]);
            for (int j = 0; j < n; j++) {
                double[] other = all.get(j);
                boolean same = one[0] == other[0];
                double mean = one[0] == 2 && same ? mean(group, (int) one[1], (int) other[1]) / (sd * sd) : 0;
                v.setEntry(i, j, same ? correlation((int) one[1], (int) other[1]) + mean : 0.35);
            }
            double sum = 0;
            for (int t = 1; t <= 305; t++) {
                sum += one[0] == 2 ? correlation((int) one[1], t) + mean(group, (int) one[1], t) / (sd * sd) : 0.35;
            }
            c.setEntry(i, sum);
        }
        RealVector w = new LUDecomposition(v).getSolver().solve(c);
        double expected = group.meanTotalKg(305) + sd * w.dotProduct(d);
        assertThat(projection.milk305Kg()).isCloseTo(expected, within(1e-6));
        double error = sd * Math.sqrt(variance - w.dotProduct(c));
        assertThat(projection.standardErrorKg()).isCloseTo(error, within(1e-6));
        assertThat(projection.standardErrorKg())
                .isLessThan(WorkedCow.project(group, now).standardErrorKg());
    }

    private static double correlation(int t, int s) {
        return 0.82 * Math.pow(0.998, Math.abs(pace(t) - pace(s))) + (t == s ? 0.18 : 0);
    }

    private static double mean(LactationStandard group, int t, int s) {
        return group.meanUncertainty().orElseThrow().between(shapes(t), shapes(s));
    }

    private static double pace(int day) {
        return day + 240 * (1 - Math.exp(-day / 45.0));
    }

    private static double[] shapes(int day) {
        double t = Math.min(day, 305);
        double u = (t - 153) / 152;
        return new double[] {1, Math.exp(-0.05 * t), u, u * u};
    }
}
