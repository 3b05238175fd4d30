package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.TreeSet;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.Lactation;

/** Against the formula written literally with full matrices and a dense inverse of Commons Math. */
class BestPredictionPeerTest {
    private static final long SEED = 305_1997;
    private static final int DAYS = 400;

    @Test
    void projectionsEqualTheFullMatrixFormulaOnAThousandRandomLactations() {
        Random random = new Random(SEED);
        for (int standardNumber = 0; standardNumber < 20; standardNumber++) {
            double[] sd = new double[DAYS];
            double[] mean = new double[DAYS + 1];
            for (int t = 1; t <= DAYS; t++) {
                sd[t - 1] = 4 + 2 * Math.sin(t / 40.0 + standardNumber);
                mean[t] = 20 + 15 * random.nextDouble();
            }
            double r = 0.99 + 0.0095 * random.nextDouble();
            double e = 0.05 + 0.4 * random.nextDouble();
            LactationStandard standard = LactationStandard.of(
                            "random", WorkedCow.MADE_UP, t -> mean[Math.min(t, DAYS)], DailySpread.ofDays(sd, r, e))
                    .withHerdLevelSdKgPerDay(1.5);
            RealMatrix v = new Array2DRowRealMatrix(DAYS, DAYS);
            for (int i = 0; i < DAYS; i++) {
                for (int j = 0; j < DAYS; j++) {
                    double same = i == j ? e : 0;
                    v.setEntry(i, j, sd[i] * sd[j] * ((1 - e) * Math.pow(r, Math.abs(i - j)) + same));
                }
            }
            RealVector ones = new ArrayRealVector(DAYS);
            RealVector mu = new ArrayRealVector(DAYS);
            for (int t = 1; t <= DAYS; t++) {
                ones.setEntry(t - 1, t <= 305 ? 1 : 0);
                mu.setEntry(t - 1, mean[t]);
            }
            RealVector vOnes = v.operate(ones);
            for (int cow = 0; cow < 50; cow++) {
                compare(random, standard, v, vOnes, ones, mu);
            }
        }
    }

    private static void compare(
            Random random, LactationStandard standard, RealMatrix v, RealVector vOnes, RealVector ones, RealVector mu) {
        TreeSet<Integer> days = new TreeSet<>();
        int tests = random.nextInt(13);
        while (days.size() < tests) {
            days.add(5 + random.nextInt(DAYS - 5));
        }
        double[] daysAndKg = new double[2 * tests];
        RealMatrix k = tests == 0 ? null : new Array2DRowRealMatrix(tests, DAYS);
        RealVector milk = new ArrayRealVector(tests);
        int row = 0;
        for (int day : days) {
            daysAndKg[2 * row] = day;
            daysAndKg[2 * row + 1] = 5 + 40 * random.nextDouble();
            milk.setEntry(row, daysAndKg[2 * row + 1]);
            k.setEntry(row++, day - 1, 1);
        }
        double extra = 0.3 * random.nextDouble();
        double kg = ones.dotProduct(mu);
        double variance = ones.dotProduct(vOnes);
        double explained = 0;
        double herd = 305;
        RealVector daily = mu;
        if (tests > 0) {
            RealMatrix vm = k.multiply(v).multiply(k.transpose());
            for (int i = 0; i < tests; i++) {
                vm.multiplyEntry(i, i, 1 + extra);
            }
            RealMatrix inverse = new LUDecomposition(vm).getSolver().getInverse();
            RealVector c = k.operate(vOnes);
            RealVector w = inverse.operate(c);
            RealVector deviation = milk.subtract(k.operate(mu));
            kg += w.dotProduct(deviation);
            explained = w.dotProduct(c);
            herd -= w.getL1Norm() == 0 ? 0 : w.dotProduct(new ArrayRealVector(tests, 1));
            daily = mu.add(v.operate(k.transpose().operate(inverse.operate(deviation))));
        }
        Lactation lactation = WorkedCow.withTests(daysAndKg);
        Projection305 projection =
                new BestPrediction().project(lactation, standard, WorkedCow.lastDate(lactation), test -> extra);
        String where = "seed " + SEED + ", days " + days;
        assertThat(projection.milk305Kg()).as(where).isCloseTo(kg, within(1e-9 * kg));
        assertThat(projection.reliabilityShare()).as(where).isCloseTo(explained / variance, within(1e-9));
        double error = Math.sqrt(variance - explained + herd * herd * 1.5 * 1.5);
        assertThat(projection.standardErrorKg()).as(where).isCloseTo(error, within(1e-9 * error));
        double[] days305 = projection.dailyMilkKg();
        for (int t = 1; t <= 305; t += 19) {
            assertThat(days305[t - 1]).as(where).isCloseTo(daily.getEntry(t - 1), within(1e-9));
        }
    }
}
