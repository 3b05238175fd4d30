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
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/** Milk, fat and protein together against dense matrices of Commons Math over all 3 x 305 days, the formulas written literally. */
class SeveralTraitsPeerTest {
    private static final long SEED = 1996;
    private static final int DAYS = 305;
    private static final double HERD_MILK = 2.311920;

    private final TraitStandards standards = LactationStandards.traitsForCow("HOL", 2);

    /** One measured value. */
    private record Measured(int trait, int day, double value) {}

    @Test
    void bestPredictionEqualsTheFullMatrixFormula() {
        RealMatrix v = covariance(true);
        Random random = new Random(SEED);
        for (int cow = 0; cow < 60; cow++) {
            List<Measured> measured = new ArrayList<>();
            Lactation lactation = randomLactation(random, measured);
            Projection305 projection = new BestPrediction().project(lactation, standards, LocalDate.of(2024, 12, 31));
            RealMatrix k = incidence(measured);
            RealVector deviation = deviation(measured);
            RealMatrix inverse = inverse(k.multiply(v).multiply(k.transpose()));
            List<Figure> figures = List.of(
                    projection.milk305(),
                    projection.fat305().orElseThrow(),
                    projection.protein305().orElseThrow());
            // milk is projected from milk alone, see BestPredictionPeerTest
            for (int trait = 1; trait < 3; trait++) {
                RealVector sum = ones(trait, DAYS);
                RealVector c = k.operate(v.operate(sum));
                RealVector w = inverse.operate(c);
                double kg = standards.standard(trait).meanTotalKg(DAYS) + w.dotProduct(deviation);
                double variance = sum.dotProduct(v.operate(sum));
                String where = "seed " + SEED + ", cow " + cow + ", trait " + trait;
                assertThat(figures.get(trait).orThrow()).as(where).isCloseTo(kg, within(1e-9 * kg));
                assertThat(projection
                                .reliabilityShare(standards.traits().get(trait))
                                .orElseThrow())
                        .as(where)
                        .isCloseTo(w.dotProduct(c) / variance, within(1e-9));
                double error = Math.sqrt(variance - w.dotProduct(c) + herdVariance(measured, w, trait));
                double half = figures.get(trait).interval(0.80).orElseThrow().high() - kg;
                assertThat(half).as(where).isCloseTo(1.2815515655446004 * error, within(1e-7 * error));
                assertThat(figures.get(trait).explanation().total()).isCloseTo(kg, within(1e-9 * kg));
            }
        }
    }

    // Schaeffer and Jamrozik 1996 (from memory): the mixed model equations; derived: they equal best prediction with V
    // = X G X' + R
    @Test
    void multipleTraitProcedureIsBestPredictionFromCurveCovariances() {
        MultipleTraitProcedure procedure = new MultipleTraitProcedure(standards);
        RealMatrix lasting = covariance(false);
        RealMatrix x = new Array2DRowRealMatrix(3 * DAYS, 9);
        for (int trait = 0; trait < 3; trait++) {
            for (int day = 1; day <= DAYS; day++) {
                x.setEntry(trait * DAYS + day - 1, 3 * trait, 1);
                x.setEntry(trait * DAYS + day - 1, 3 * trait + 1, day);
                x.setEntry(trait * DAYS + day - 1, 3 * trait + 2, Math.exp(-0.05 * day));
            }
        }
        RealMatrix p = inverse(x.transpose().multiply(x)).multiply(x.transpose());
        RealMatrix g = p.multiply(lasting).multiply(p.transpose());
        RealMatrix rest = lasting.subtract(x.multiply(p).multiply(lasting));
        rest = rest.subtract(rest.multiply(p.transpose()).multiply(x.transpose()));
        for (int i = 0; i < 9; i++) {
            for (int j = 0; j < 9; j++) {
                double scale = Math.sqrt(g.getEntry(i, i) * g.getEntry(j, j));
                assertThat(procedure.coefficients().covariance(i, j)).isCloseTo(g.getEntry(i, j), within(1e-7 * scale));
            }
        }
        RealMatrix v = x.multiply(g).multiply(x.transpose());
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double sds = sd(i) * sd(j);
                for (int day = 0; day < DAYS; day++) {
                    double residual = rest.getEntry(i * DAYS + day, j * DAYS + day) + standards.daily(i, j) * sds;
                    v.addToEntry(i * DAYS + day, j * DAYS + day, residual);
                }
            }
        }
        Random random = new Random(SEED);
        for (int cow = 0; cow < 40; cow++) {
            List<Measured> measured = new ArrayList<>();
            Lactation lactation = randomLactation(random, measured);
            int toDay = measured.get(measured.size() - 1).day();
            AccumulatedYield yield = procedure.accumulate(lactation, LocalDate.of(2024, 12, 31));
            RealMatrix k = incidence(measured);
            RealMatrix inverse = inverse(k.multiply(v).multiply(k.transpose()));
            RealMatrix xg = x.multiply(g).multiply(x.transpose());
            List<Figure> figures = List.of(yield.milk(), yield.fat(), yield.protein());
            for (int trait = 0; trait < 3; trait++) {
                // only the curve's part is carried to other days: the covariance with the total is that of X G X'
                RealVector sum = ones(trait, toDay);
                RealVector c = k.operate(xg.operate(sum));
                double kg = standards.standard(trait).meanTotalKg(toDay)
                        + c.dotProduct(inverse.operate(deviation(measured)));
                assertThat(figures.get(trait).orThrow())
                        .as("seed %d, cow %d, trait %d", SEED, cow, trait)
                        .isCloseTo(kg, within(1e-7 * kg));
                if (trait == 0) {
                    TestRecords records = TestRecords.of(
                            UsableTests.of(lactation, LocalDate.of(2024, 12, 31)), standards.traits(), DAYS, test -> 0);
                    double error = sum.dotProduct(xg.operate(sum)) - c.dotProduct(inverse.operate(c));
                    assertThat(procedure.curveErrorVariance(records, 0, toDay)).isCloseTo(error, within(1e-6 * error));
                }
            }
            assertThat(yield.toDaysInMilk()).isEqualTo(toDay);
        }
    }

    private Lactation randomLactation(Random random, List<Measured> measured) {
        List<TestDay> tests = new ArrayList<>();
        int day = 0;
        int count = 1 + random.nextInt(8);
        for (int i = 0; i < count; i++) {
            day += 6 + random.nextInt(30);
            double milkKg = 20 + 20 * random.nextDouble();
            TestDay test = TestDay.ofMilk(WorkedCow.CALVING.plusDays(day), milkKg);
            measured.add(new Measured(0, day, milkKg));
            if (random.nextInt(4) > 0) {
                double pct = 3 + 2 * random.nextDouble();
                test = test.withFatPct(pct);
                measured.add(new Measured(1, day, milkKg * pct / 100));
            }
            if (random.nextInt(4) > 0) {
                double pct = 3 + random.nextDouble();
                test = test.withProteinPct(pct);
                measured.add(new Measured(2, day, milkKg * pct / 100));
            }
            tests.add(test);
        }
        return Lactation.inMilk(2, WorkedCow.CALVING, tests);
    }

    /** All traits and days, trait by trait; lasting parts only, or daily parts too. */
    private RealMatrix covariance(boolean withDaily) {
        double[] e = {0.20, 0.24, 0.28};
        double[][] lasting = {{1, 0.685, 0.895}, {0.685, 1, 0.808}, {0.895, 0.808, 1}};
        double[][] daily = {{1, 0.807, 0.929}, {0.807, 1, 0.710}, {0.929, 0.710, 1}};
        RealMatrix v = new Array2DRowRealMatrix(3 * DAYS, 3 * DAYS);
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double b = lasting[i][j] * Math.sqrt((1 - e[i]) * (1 - e[j]));
                double ee = daily[i][j] * Math.sqrt(e[i] * e[j]);
                for (int t = 0; t < DAYS; t++) {
                    for (int s = 0; s < DAYS; s++) {
                        double share = b * Math.pow(0.995, Math.abs(t - s)) + (withDaily && t == s ? ee : 0);
                        v.setEntry(i * DAYS + t, j * DAYS + s, sd(i) * sd(j) * share);
                    }
                }
            }
        }
        return v;
    }

    private double sd(int trait) {
        return new double[] {5.779801, 0.2695951, 0.1902717}[trait];
    }

    private static RealMatrix incidence(List<Measured> measured) {
        RealMatrix k = new Array2DRowRealMatrix(measured.size(), 3 * DAYS);
        for (int i = 0; i < measured.size(); i++) {
            k.setEntry(i, measured.get(i).trait() * DAYS + measured.get(i).day() - 1, 1);
        }
        return k;
    }

    private RealVector deviation(List<Measured> measured) {
        RealVector deviation = new ArrayRealVector(measured.size());
        for (int i = 0; i < measured.size(); i++) {
            Measured one = measured.get(i);
            deviation.setEntry(i, one.value() - standards.standard(one.trait()).meanKg(one.day()));
        }
        return deviation;
    }

    private static double herdVariance(List<Measured> measured, RealVector w, int trait) {
        double[] left = new double[3];
        left[trait] = DAYS;
        for (int i = 0; i < measured.size(); i++) {
            left[measured.get(i).trait()] -= w.getEntry(i);
        }
        double[] sd = {HERD_MILK, 0.1078380, 0.0761087};
        double[][] together = {{1, 0.685, 0.895}, {0.685, 1, 0.808}, {0.895, 0.808, 1}};
        double variance = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                variance += left[i] * left[j] * sd[i] * sd[j] * together[i][j];
            }
        }
        return variance;
    }

    private static RealVector ones(int trait, int toDay) {
        RealVector sum = new ArrayRealVector(3 * DAYS);
        for (int day = 0; day < toDay; day++) {
            sum.setEntry(trait * DAYS + day, 1);
        }
        return sum;
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        return new LUDecomposition(matrix, 1e-300).getSolver().getInverse();
    }

    @Test
    void oneTraitOfThreeWithoutItsFellowsIsTheSingleTrait() {
        Lactation lactation = WorkedCow.withTests(20, 24, 50, 30, 80, 29);
        LocalDate asOf = WorkedCow.lastDate(lactation);
        Projection305 together = new BestPrediction().project(lactation, standards, asOf);
        Projection305 alone = new BestPrediction().project(lactation, standards.first(), asOf);
        assertThat(together.milk305().explanation()).isEqualTo(alone.milk305().explanation());
        assertThat(together.milk305Kg()).isCloseTo(alone.milk305Kg(), within(1e-9));
        assertThat(together.standardErrorKg()).isCloseTo(alone.standardErrorKg(), within(1e-9));
        assertThat(alone.fat305()).isEmpty();
        // milk alone tells of fat too
        assertThat(together.reliabilityShare(LactationTrait.FAT).orElseThrow()).isBetween(0.1, 0.5);
    }

    @Test
    void cellScoreIsTheMeanOfTheDaysScoresOnItsOwn() {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(20), 30).withSccThousandPerMl(400),
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(50), 30).withSccThousandPerMl(0),
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(80), 30));
        Lactation lactation = Lactation.inMilk(2, WorkedCow.CALVING, tests);
        Projection305 projection = new BestPrediction().project(lactation, standards, LocalDate.of(2024, 4, 1));
        Figure score = projection.cellScore305().orElseThrow();
        LactationStandard standard = standards.cells().orElseThrow();
        // score of 400,000 cells is 5; a count of 0 has none
        DailySpread spread = standard.spread();
        double weight = spread.covarianceWithTotal(20, 305) / spread.covariance(20, 20);
        double expected = (standard.meanTotalKg(305) + weight * (5 - standard.meanKg(20))) / 305;
        assertThat(score.orThrow()).isCloseTo(expected, within(1e-9));
        assertThat(score.unit()).isEqualTo("score");
        assertThat(score.explanation().total()).isCloseTo(expected, within(1e-12));
    }
}
