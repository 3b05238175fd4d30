package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** A herd drawn from the model, 80 cows calving over four months, weighed on the same days; on one of them the scale shows 4 kg too little. */
class HerdTestDaysLawTest {
    private static final long SEED = 1925;
    private static final int COWS = 80;
    private static final LocalDate FIRST = LocalDate.of(2024, 5, 1);
    private static final int WRONG = 3;
    private static final double WRONG_KG = -4;

    private final LactationStandard reference = LactationStandards.refinedForCow("HOL", 1, LactationTrait.MILK);
    private final List<Double> truth = new ArrayList<>();
    private final List<HerdLactation> history = herd();
    private final HerdStandards standards = HerdStandards.learn(history, SimulatedHerd.LATER);
    private final HerdTestDays days = HerdTestDays.learn(history, standards, SimulatedHerd.LATER);

    private List<HerdLactation> herd() {
        double[] mean = new double[306];
        for (int day = 1; day <= 305; day++) {
            mean[day] = reference.meanKg(day);
        }
        SimulatedHerd simulated = new SimulatedHerd(SEED, reference.spread(), mean);
        List<HerdLactation> cows = new ArrayList<>();
        for (int cow = 0; cow < COWS; cow++) {
            LocalDate calving = FIRST.minusDays(5 + 3 * (cow % 40));
            double[] kg = simulated.dailyKg();
            truth.add(SimulatedHerd.total(kg));
            List<TestDay> tests = new ArrayList<>();
            for (int test = 0; test < 9; test++) {
                LocalDate date = FIRST.plusDays(28 * test);
                int day = (int) (date.toEpochDay() - calving.toEpochDay());
                if (day <= 305) {
                    double weighed = kg[day] + (test == WRONG ? WRONG_KG : 0);
                    tests.add(TestDay.ofMilk(date, Math.max(3, weighed)).withFatPct(4));
                }
            }
            cows.add(new HerdLactation("cow " + cow, "HOL", Lactation.inMilk(1, calving, tests)));
        }
        return cows;
    }

    @Test
    void theWrongScaleIsFoundAndTheOtherDaysAreNot() {
        double sd = reference.spread().sdPerDay(1);
        for (int test = 0; test < 9; test++) {
            TestDayEffects.Effect effect =
                    days.withoutCow("cow 0").of(FIRST.plusDays(28 * test)).orElseThrow();
            assertThat(effect.cows()).isBetween(COWS / 2, COWS - 1);
            if (test == WRONG) {
                // shrinkage, and the herd's mean learned from the same days, take a part of it
                assertThat(effect.shareOfSd()).isBetween(WRONG_KG / sd, 0.5 * WRONG_KG / sd);
            } else {
                assertThat(effect.shareOfSd())
                        .as("seed %d, test %d", SEED, test)
                        .isCloseTo(0, within(0.25));
            }
            assertThat(effect.isStriking()).isEqualTo(test == WRONG);
        }
    }

    @Test
    void takingItOutMakesProjectionsFromThatDayBetter() {
        double with = 0;
        double without = 0;
        double biasWith = 0;
        LocalDate asOf = FIRST.plusDays(28 * WRONG);
        for (int cow = 0; cow < COWS; cow++) {
            HerdLactation one = history.get(cow);
            LactationStandard standard = standards.forCow(one.animal(), "HOL", 1, LactationTrait.MILK);
            BestPrediction method = new BestPrediction();
            double raw = method.project(one.lactation(), standard, asOf).milk305Kg() - truth.get(cow);
            double corrected =
                    method.project(days.withoutCow(one.animal()).takenOutOf(one.lactation(), standard), standard, asOf)
                                    .milk305Kg()
                            - truth.get(cow);
            with += corrected * corrected;
            without += raw * raw;
            biasWith += corrected / COWS;
        }
        assertThat(Math.sqrt(with / COWS)).as("seed %d", SEED).isLessThan(0.9 * Math.sqrt(without / COWS));
        assertThat(biasWith).isCloseTo(0, within(250.0));
    }

    @Test
    void strikingDaysAreSaidAndPercentagesStay() {
        HerdLactation one = history.get(5);
        LactationStandard standard = standards.forCow(one.animal(), "HOL", 1, LactationTrait.MILK);
        List<Finding> findings = days.withoutCow(one.animal()).findings(one.lactation(), standard);
        assertThat(findings)
                .extracting(Finding::code, finding -> finding.date().orElseThrow())
                .containsExactly(tuple(FindingCode.HERD_TEST_DAY_EFFECT, FIRST.plusDays(28 * WRONG)));
        Lactation corrected = days.withoutCow(one.animal()).takenOutOf(one.lactation(), standard);
        assertThat(corrected.testDays()).hasSameSizeAs(one.lactation().testDays());
        assertThat(corrected.testDays().get(WRONG).fatPct()).hasValue(4);
        assertThat(corrected.testDays().get(WRONG).milkKg().orElseThrow())
                .isGreaterThan(one.lactation().testDays().get(WRONG).milkKg().orElseThrow() + 2);
    }

    @Test
    void fewCowsSayNothingOfADay() {
        List<HerdLactation> few = history.subList(0, HerdTestDays.LEAST_COWS);
        HerdTestDays ofFew = HerdTestDays.learn(few, standards, SimulatedHerd.LATER);
        assertThat(ofFew.withoutCow("cow 0").of(FIRST)).isEmpty();
        assertThat(ofFew.withoutCow("another").of(FIRST)).isPresent();
        assertThat(days.withoutCow("cow 0").of(FIRST.plusDays(1))).isEmpty();
    }

    /** To 1e-9 what is learned when she was never there. */
    @Test
    void leavingACowOutEqualsNeverHavingSeenHer() {
        for (int cow = 0; cow < COWS; cow += 7) {
            String animal = history.get(cow).animal();
            List<HerdLactation> others =
                    history.stream().filter(one -> !one.animal().equals(animal)).toList();
            TestDayEffects without = days.withoutCow(animal);
            TestDayEffects never =
                    HerdTestDays.learn(others, standards, SimulatedHerd.LATER).withoutCow("nobody");
            for (int test = 0; test < 9; test++) {
                TestDayEffects.Effect left =
                        without.of(FIRST.plusDays(28 * test)).orElseThrow();
                TestDayEffects.Effect right =
                        never.of(FIRST.plusDays(28 * test)).orElseThrow();
                assertThat(left.cows()).isEqualTo(right.cows());
                assertThat(left.shareOfSd()).isCloseTo(right.shareOfSd(), within(1e-9));
                assertThat(left.standardErrorOfSd()).isCloseTo(right.standardErrorOfSd(), within(1e-9));
            }
        }
    }
}
