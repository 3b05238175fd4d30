package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.MeanUncertainty;
import org.pailbook.lactation.testday.Lactation;

class HerdStandardsLawTest {
    private static final long SEED = 99;
    private static final LactationStandard REFERENCE = LactationStandards.refinedForCow("HOL", 1, LactationTrait.MILK);

    @Test
    void withoutHistoryTheStandardIsTheReferenceWithAnUnknownHerd() {
        LactationStandard none =
                HerdStandards.learn(List.of(), SimulatedHerd.LATER).forCow("x", "HOL", 1, LactationTrait.MILK);
        for (int day : new int[] {1, 60, 305, 400}) {
            assertThat(none.meanKg(day)).isCloseTo(REFERENCE.meanKg(day), within(1e-12));
            assertThat(none.spread().sdPerDay(day)).isCloseTo(REFERENCE.spread().sdPerDay(day), within(1e-12));
        }
        double[] middle = MeanUncertainty.ofDay(153);
        double sd = REFERENCE.spread().sdPerDay(153);
        // level of herd and of group within it: .4 and .3 standard deviations
        assertThat(none.meanUncertainty().orElseThrow().between(middle, middle))
                .isCloseTo(sd * sd * (0.16 + 0.09), within(0.01 * sd * sd));
    }

    @Test
    void manyLactationsMakeTheHerdsOwnCurveAndSpread() {
        double[] own = new double[306];
        for (int day = 1; day <= 305; day++) {
            own[day] = 36 - 12 * Math.exp(-0.05 * day) - 0.03 * day;
        }
        LactationStandard learned = HerdStandards.learn(herd(own, 1.4, 600), SimulatedHerd.LATER)
                .forCow("new", "HOL", 1, LactationTrait.MILK);
        for (int day : new int[] {10, 60, 150, 240, 300}) {
            assertThat(learned.meanKg(day)).as("seed %d, day %d", SEED, day).isCloseTo(own[day], within(0.8));
            assertThat(Math.abs(learned.meanKg(day) - own[day]))
                    .isLessThan(Math.abs(REFERENCE.meanKg(day) - own[day]) / 3);
        }
        assertThat(learned.spread().sdPerDay(100) / REFERENCE.spread().sdPerDay(100))
                .isCloseTo(1.4, within(0.05));
        double[] middle = MeanUncertainty.ofDay(153);
        assertThat(Math.sqrt(learned.meanUncertainty().orElseThrow().between(middle, middle)))
                .isLessThan(0.4);
    }

    @Test
    void otherGroupsOfTheHerdTellOfAGroupWithoutHistory() {
        double[] rich = new double[306];
        for (int day = 1; day <= 305; day++) {
            rich[day] = REFERENCE.meanKg(day) + 5;
        }
        HerdStandards herd = HerdStandards.learn(herd(rich, 1, 60), SimulatedHerd.LATER);
        LactationStandard jersey = herd.forCow("new", "JER", 2, LactationTrait.MILK);
        LactationStandard jerseyReference = LactationStandards.refinedForCow("JER", 2, LactationTrait.MILK);
        double moved = (jersey.meanKg(150) - jerseyReference.meanKg(150))
                / jerseyReference.spread().sdPerDay(150);
        double ownMoved = (herd.forCow("new", "HOL", 1, LactationTrait.MILK).meanKg(150) - REFERENCE.meanKg(150))
                / REFERENCE.spread().sdPerDay(150);
        assertThat(moved).isBetween(0.3 * ownMoved, ownMoved);
    }

    @Test
    void aCowsOwnLactationsDoNotTouchHerStandardAndOrderDoesNotMatter() {
        double[] mean = new double[306];
        for (int day = 1; day <= 305; day++) {
            mean[day] = REFERENCE.meanKg(day) + 3;
        }
        List<HerdLactation> history = herd(mean, 1, 30);
        List<HerdLactation> without = new ArrayList<>(history.subList(1, 30));
        LactationStandard full =
                HerdStandards.learn(history, SimulatedHerd.LATER).forCow("cow 0", "HOL", 1, LactationTrait.MILK);
        LactationStandard leftOut =
                HerdStandards.learn(without, SimulatedHerd.LATER).forCow("cow 0", "HOL", 1, LactationTrait.MILK);
        Collections.reverse(without);
        LactationStandard reversed =
                HerdStandards.learn(without, SimulatedHerd.LATER).forCow("cow 0", "HOL", 1, LactationTrait.MILK);
        for (int day : new int[] {1, 100, 305}) {
            assertThat(full.meanKg(day)).isCloseTo(leftOut.meanKg(day), within(1e-9));
            assertThat(full.spread().sdPerDay(day)).isCloseTo(leftOut.spread().sdPerDay(day), within(1e-9));
            assertThat(reversed.meanKg(day)).isCloseTo(leftOut.meanKg(day), within(1e-9));
        }
    }

    @Test
    void aLaterLactationIsNotHerPast() {
        Lactation past = WorkedCow.withTests(20, 40, 100, 38);
        HerdStandards herd = HerdStandards.learn(List.of(new HerdLactation("her", "HOL", past)), SimulatedHerd.LATER);
        LactationStandard earlier =
                herd.forCowWithHerPast("her", "HOL", 1, WorkedCow.CALVING.minusDays(400), LactationTrait.MILK);
        LactationStandard same = herd.forCowWithHerPast("her", "HOL", 1, WorkedCow.CALVING, LactationTrait.MILK);
        LactationStandard next =
                herd.forCowWithHerPast("her", "HOL", 2, WorkedCow.CALVING.plusDays(400), LactationTrait.MILK);
        LactationStandard without = herd.forCow("her", "HOL", 2, LactationTrait.MILK);
        assertThat(earlier.findings()).isEmpty();
        assertThat(same.findings()).isEmpty();
        assertThat(next.meanKg(100)).isGreaterThan(without.meanKg(100));
        assertThat(next.knownLevelVariance()).isPositive();
    }

    @Test
    void testsAfterTheAsOfDateTeachNothing() {
        double[] mean = new double[306];
        for (int day = 1; day <= 305; day++) {
            mean[day] = 50;
        }
        List<HerdLactation> history = herd(mean, 1, 20);
        LactationStandard before =
                HerdStandards.learn(history, WorkedCow.CALVING).forCow("new", "HOL", 1, LactationTrait.MILK);
        assertThat(before.meanKg(100)).isCloseTo(REFERENCE.meanKg(100), within(1e-12));
    }

    @Test
    void anUnknownBreedStartsFromThePooledStandardAndSaysSo() {
        LactationStandard standard =
                HerdStandards.learn(List.of(), SimulatedHerd.LATER).forCow("x", "Simmental", 2, LactationTrait.MILK);
        assertThat(standard.findings())
                .extracting(finding -> finding.code())
                .contains(FindingCode.REFERENCE_OF_OTHER_BREED);
    }

    // 3,000 lactations in 300 herds of 10 drawn from the model with the herd's own level; standards learned from the
    // other 9 cows. Within
    // four standard errors, the herds counted as the independent units.
    @Test
    void intervalsHoldInHerdsThatDifferAsMuchAsTheRulesSay() {
        Random random = new Random(SEED);
        double sd = REFERENCE.spread().sdPerDay(1);
        double[] herdSd = HerdStandards.Rules.OURS.herdSd();
        double[] groupSd = HerdStandards.Rules.OURS.groupSd();
        int inside80 = 0;
        int inside95 = 0;
        int cows = 0;
        for (int herd = 0; herd < 300; herd++) {
            double[] mean = new double[306];
            double[] coefficients = new double[4];
            for (int k = 0; k < 4; k++) {
                coefficients[k] = sd * Math.hypot(herdSd[k], groupSd[k]) * random.nextGaussian();
            }
            for (int day = 1; day <= 305; day++) {
                mean[day] = REFERENCE.meanKg(day);
                for (int k = 0; k < 4; k++) {
                    mean[day] += coefficients[k] * MeanUncertainty.shape(k, day);
                }
            }
            SimulatedHerd simulated = new SimulatedHerd(SEED + herd, REFERENCE.spread(), mean);
            List<HerdLactation> history = new ArrayList<>();
            List<Double> truth = new ArrayList<>();
            for (int cow = 0; cow < 10; cow++) {
                double[] kg = simulated.dailyKg();
                truth.add(SimulatedHerd.total(kg));
                history.add(new HerdLactation("cow " + cow, "HOL", SimulatedHerd.monthly(1, kg, 5 + 3 * cow, 10)));
            }
            HerdStandards learned = HerdStandards.learn(history, SimulatedHerd.LATER);
            for (int cow = 0; cow < 10; cow++) {
                Projection305 projection = new BestPrediction()
                        .project(
                                history.get(cow).lactation(),
                                learned.forCow("cow " + cow, "HOL", 1, LactationTrait.MILK),
                                WorkedCow.CALVING.plusDays(80));
                double z = Math.abs(truth.get(cow) - projection.milk305Kg()) / projection.standardErrorKg();
                cows++;
                inside80 += z < Coverage.EIGHTY_PERCENT.normalMultiple() ? 1 : 0;
                inside95 += z < Coverage.NINETY_FIVE_PERCENT.normalMultiple() ? 1 : 0;
            }
        }
        assertThat(inside80 / (double) cows)
                .as("seed %d", SEED)
                .isCloseTo(0.80, within(4 * Math.sqrt(0.16 / cows) + 0.01));
        assertThat(inside95 / (double) cows)
                .as("seed %d", SEED)
                .isCloseTo(0.95, within(4 * Math.sqrt(0.0475 / cows) + 0.01));
    }

    private static List<HerdLactation> herd(double[] meanKg, double spreadFactor, int lactations) {
        double sd = REFERENCE.spread().sdPerDay(1) * spreadFactor;
        SimulatedHerd simulated = new SimulatedHerd(SEED, REFERENCE.spread().withSdPerDay(new double[] {sd}), meanKg);
        List<HerdLactation> history = new ArrayList<>();
        for (int i = 0; i < lactations; i++) {
            history.add(new HerdLactation(
                    "cow " + i, "HOL", SimulatedHerd.monthly(1, simulated.dailyKg(), 5 + i % 30, 10)));
        }
        return history;
    }
}
