package org.pailbook.lactation.persistency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.persistency.ParityFactorLearning.CompletedLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class HerdAndLifetimeLawTest {
    private static final long SEED = 365;
    private static final LocalDate CALVING = LocalDate.of(2022, 1, 1);

    private static List<FindingCode> codes(Figure figure) {
        return figure.findings().stream().map(Finding::code).toList();
    }

    /** A cow that gives the same every day, tested every 20 days from day 10 to the day given. */
    private static List<TestDay> flat(LocalDate calving, double kg, int lastDay) {
        List<TestDay> tests = new ArrayList<>();
        for (int day = 10; day <= lastDay; day += 20) {
            tests.add(TestDay.ofMilk(calving.plusDays(day), kg));
        }
        return tests;
    }

    @Test
    void aHerdThatGivesTheSameEveryDayHas365TimesThatWhateverTheTests() {
        Random random = new Random(SEED);
        for (int i = 0; i < 50; i++) {
            double kg = 10 + 30 * random.nextDouble();
            List<HerdStay> herd = new ArrayList<>();
            for (int cow = 0; cow < 5; cow++) {
                LocalDate calving = CALVING.plusDays(random.nextInt(100));
                herd.add(new HerdStay(
                        calving,
                        Optional.empty(),
                        List.of(Lactation.inMilk(1, calving, flat(calving, kg, 480 + random.nextInt(100))))));
            }
            LocalDate asOf = CALVING.plusDays(480);
            // the day of calving counts as a cow-day without milk only inside the year; here all calved before it
            assertThat(RollingHerdAverage.YEAR.of(herd, asOf).orThrow())
                    .as("seed " + SEED)
                    .isCloseTo(365 * kg, within(1e-6));
        }
    }

    @Test
    void daysAfterTheLastTestAreInNeitherSumAndAreCounted() {
        Lactation lactation = Lactation.inMilk(1, CALVING, flat(CALVING, 25, 430));
        Figure average = RollingHerdAverage.YEAR.of(
                List.of(new HerdStay(CALVING, Optional.empty(), List.of(lactation))), CALVING.plusDays(440));
        assertThat(average.orThrow()).isCloseTo(365 * 25, within(1e-6));
        assertThat(codes(average)).containsExactly(FindingCode.INCOMPLETE_SUM);
        assertThat(average.findings().get(0).seen().orElseThrow()).startsWith("10 cow-days");
    }

    @Test
    void aLactationWithoutATestIsInNeitherSum() {
        LocalDate again = CALVING.plusDays(420);
        Lactation first = new Lactation(1, CALVING, Optional.of(CALVING.plusDays(360)), flat(CALVING, 25, 360));
        Lactation untested = Lactation.inMilk(2, again, List.of());
        Figure average = RollingHerdAverage.YEAR.of(
                List.of(new HerdStay(CALVING, Optional.empty(), List.of(first, untested))), CALVING.plusDays(430));
        // days 66 to 430: 295 of them with milk, 365 in all, 10 not weighed
        assertThat(average.orThrow()).isCloseTo(295 * 25.0 / 355 * 365, within(1e-6));
        assertThat(average.findings().get(0).seen().orElseThrow()).startsWith("10 cow-days");
    }

    @Test
    void aCowThatLeftCountsOnlyWhileSheWasThere() {
        HerdStay there =
                new HerdStay(CALVING, Optional.empty(), List.of(Lactation.inMilk(1, CALVING, flat(CALVING, 20, 450))));
        HerdStay sold = new HerdStay(
                CALVING,
                Optional.of(CALVING.plusDays(186)),
                List.of(Lactation.inMilk(1, CALVING, flat(CALVING, 40, 250))));
        Figure average = RollingHerdAverage.YEAR.of(List.of(there, sold), CALVING.plusDays(450));
        // year: days 86 to 450; the second was there to day 185, 100 days
        assertThat(average.orThrow()).isCloseTo((365 * 20 + 100 * 40) / 465.0 * 365, within(1e-6));
        assertThat(codes(average)).isEmpty();
        HerdStay bought = new HerdStay(
                CALVING.plusDays(351), Optional.empty(), List.of(Lactation.inMilk(1, CALVING, flat(CALVING, 40, 450))));
        assertThat(RollingHerdAverage.YEAR
                        .of(List.of(there, bought), CALVING.plusDays(450))
                        .orThrow())
                .isCloseTo((365 * 20 + 100 * 40) / 465.0 * 365, within(1e-6));
    }

    @Test
    void withLessThanAYearOfTestsThereIsNoRollingAverage() {
        HerdStay cow =
                new HerdStay(CALVING, Optional.empty(), List.of(Lactation.inMilk(1, CALVING, flat(CALVING, 20, 450))));
        Figure early = RollingHerdAverage.YEAR.of(List.of(cow), CALVING.plusDays(373));
        assertThat(codes(early)).containsExactly(FindingCode.YEAR_INCOMPLETE);
        assertThat(early.findings().get(0).seen()).hasValue("364 days so far");
        assertThat(RollingHerdAverage.YEAR
                        .of(List.of(cow), CALVING.plusDays(374))
                        .value())
                .isPresent();
        assertThat(RollingHerdAverage.YEAR
                        .of(List.of(), CALVING)
                        .findings()
                        .get(0)
                        .seen())
                .hasValue("0 days so far");
    }

    @Test
    void aHerdWhoseCowsAllLeftBeforeTheYearHasNoValue() {
        HerdStay gone = new HerdStay(
                CALVING,
                Optional.of(CALVING.plusDays(20)),
                List.of(Lactation.inMilk(1, CALVING, flat(CALVING, 20, 15))));
        assertThat(codes(RollingHerdAverage.YEAR.of(List.of(gone), CALVING.plusDays(800))))
                .containsExactly(FindingCode.NO_TEST_DAYS);
    }

    @Test
    void aStayThatEndsBeforeItBeginsIsRefused() {
        assertThatThrownBy(() -> new HerdStay(CALVING, Optional.of(CALVING.minusDays(1)), List.of()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(new HerdStay(CALVING, Optional.of(CALVING), List.of()).cowDays(CALVING, CALVING.plusDays(5)))
                .isZero();
        assertThat(new HerdStay(CALVING.plusDays(9), Optional.empty(), List.of()).cowDays(CALVING, CALVING.plusDays(5)))
                .isZero();
    }

    @Test
    void lifetimeLeavesOutALactationWithoutAValueAndNamesIt() {
        LifetimeYield lifetime = LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION);
        Lactation untested = new Lactation(1, CALVING, Optional.of(CALVING.plusDays(300)), List.of());
        LocalDate again = CALVING.plusDays(400);
        Lactation tested = Lactation.inMilk(2, again, flat(again, 20, 50));
        Figure total = lifetime.totalKg(List.of(untested, tested), again.plusDays(60));
        assertThat(total.orThrow()).isCloseTo(50 * 20, within(1e-9));
        assertThat(codes(total)).containsExactly(FindingCode.INCOMPLETE_SUM);
        Figure none = lifetime.totalKg(List.of(untested), again);
        assertThat(none.value()).isEmpty();
        assertThat(codes(none)).containsExactly(FindingCode.INCOMPLETE_SUM, FindingCode.NO_TEST_DAYS);
        assertThat(codes(lifetime.kgPerDaySinceFirstCalving(List.of(), again)))
                .containsExactly(FindingCode.NO_TEST_DAYS);
        assertThat(lifetime.id()).isEqualTo("lifetime-yield-test-interval-whole-lactation");
    }

    @Test
    void lifetimePassesOnWhatWeakensALactation() {
        Lactation late = Lactation.inMilk(1, CALVING, List.of(TestDay.ofMilk(CALVING.plusDays(60), 20)));
        assertThat(codes(LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION)
                        .totalKg(List.of(late), CALVING.plusDays(70))))
                .containsExactly(FindingCode.FIRST_TEST_LATE);
    }

    @Test
    void lifetimeDoesNotRepeatWhatOnlyNotesSomethingOfALactation() {
        List<TestDay> tests = new ArrayList<>(flat(CALVING, 20, 50));
        tests.add(TestDay.ofMilk(CALVING.plusDays(2), 10));
        Figure total = LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION)
                .totalKg(List.of(Lactation.inMilk(1, CALVING, tests)), CALVING.plusDays(60));
        assertThat(total.orThrow()).isCloseTo(1000, within(1e-9));
        assertThat(codes(total)).isEmpty();
    }

    @Test
    void aLactationThatHasNotBegunIsNotMissedInALifetime() {
        Lactation first = new Lactation(1, CALVING, Optional.of(CALVING.plusDays(300)), flat(CALVING, 20, 300));
        LocalDate again = CALVING.plusDays(400);
        Lactation next = Lactation.inMilk(2, again, flat(again, 20, 50));
        Figure total = LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION).totalKg(List.of(first, next), again);
        assertThat(codes(total)).isEmpty();
        assertThat(total.orThrow()).isCloseTo(6000, within(1e-9));
    }

    @Test
    void oneDayOfLifeIsEnoughForAMeanOfIt() {
        Lactation lactation = Lactation.inMilk(1, CALVING, flat(CALVING, 20, 50));
        assertThat(LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION)
                        .kgPerDayOfLife(CALVING.plusDays(49), List.of(lactation), CALVING.plusDays(60))
                        .orThrow())
                .isCloseTo(1000, within(1e-9));
    }

    @Test
    void aCowDriedOffInsideTheYearCountsHerDryDays() {
        // milk to day 300, year of days 66 to 430: 235 days with milk of 365
        Lactation dried = new Lactation(1, CALVING, Optional.of(CALVING.plusDays(300)), flat(CALVING, 20, 290));
        Figure average = RollingHerdAverage.YEAR.of(
                List.of(new HerdStay(CALVING, Optional.of(CALVING.plusDays(900)), List.of(dried))),
                CALVING.plusDays(430));
        assertThat(average.orThrow()).isCloseTo(235 * 20, within(1e-6));
        assertThat(codes(average)).isEmpty();
    }

    @Test
    void aCowThatLeftBeforeHerLastTestWasDueCountsDaysNobodyWeighed() {
        // tested to day 410, left on day 421: days 411 to 420 are in neither sum
        Lactation lactation = Lactation.inMilk(1, CALVING, flat(CALVING, 20, 410));
        Figure average = RollingHerdAverage.YEAR.of(
                List.of(new HerdStay(CALVING, Optional.of(CALVING.plusDays(421)), List.of(lactation))),
                CALVING.plusDays(450));
        assertThat(average.orThrow()).isCloseTo(365 * 20, within(1e-6));
        assertThat(average.findings().get(0).seen().orElseThrow()).startsWith("10 cow-days");
    }

    @Test
    void datesThatCannotBeGiveNoValue() {
        Lactation lactation = Lactation.inMilk(1, CALVING, flat(CALVING, 20, 50));
        Figure born = LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION)
                .kgPerDayOfLife(CALVING.plusDays(50), List.of(lactation), CALVING.plusDays(60));
        assertThat(codes(born)).containsExactly(FindingCode.DATES_OUT_OF_ORDER);
        Figure open = DaysOpen.TO_CONCEPTION.of(CALVING, Optional.of(CALVING.minusDays(1)), CALVING.plusDays(60));
        assertThat(codes(open)).containsExactly(FindingCode.DATES_OUT_OF_ORDER);
        assertThat(codes(DaysOpen.TO_CONCEPTION.of(CALVING, Optional.empty(), CALVING.minusDays(1))))
                .containsExactly(FindingCode.DATES_OUT_OF_ORDER);
        assertThat(DaysOpen.TO_CONCEPTION.of(CALVING, Optional.empty(), CALVING).orThrow())
                .isZero();
    }

    @Test
    void anAnnualizedYieldKeepsWhatIsSaidOfTheYieldAndOfTheInterval() {
        Lactation lactation = new Lactation(1, CALVING, Optional.of(CALVING.plusDays(300)), flat(CALVING, 20, 300));
        Figure yield = TestIntervalMethod.WHOLE_LACTATION
                .accumulate(lactation, CALVING.plusDays(400))
                .milk();
        Figure seen = AnnualizedYield.BY_CALVING_INTERVAL.of(yield, 400, false, CALVING.plusDays(400));
        assertThat(seen.orThrow()).isCloseTo(6000 * 365 / 400.0, within(1e-9));
        assertThat(codes(seen)).isEmpty();
        assertThat(seen.inputs()).isEqualTo(yield.inputs());
        assertThat(seen.explanation().parts().get(0).what()).isEqualTo("365 x 6000.0 kg / 400 d");
        assertThat(codes(AnnualizedYield.BY_CALVING_INTERVAL.of(yield, 400, true, CALVING.plusDays(400))))
                .containsExactly(FindingCode.INTERVAL_EXPECTED);
        Figure none = TestIntervalMethod.WHOLE_LACTATION
                .accumulate(Lactation.inMilk(1, CALVING, List.of()), CALVING.plusDays(400))
                .milk();
        assertThat(AnnualizedYield.BY_CALVING_INTERVAL
                        .of(none, 400, false, CALVING.plusDays(400))
                        .value())
                .isEmpty();
    }

    @Test
    void parityFactorsOfTheModelThatMadeTheDataAreFoundAgain() {
        // parity levels 6000, 7500, 8000 kg, two groups 300 kg apart, cows with SD 500; only the better half comes to
        // the next parity
        Random random = new Random(SEED);
        List<CompletedLactation> lactations = new ArrayList<>();
        double[] level = {6000, 7500, 8000};
        for (int cow = 0; cow < 1500; cow++) {
            double cowKg = 500 * random.nextGaussian();
            for (int parity = 1; parity <= 3; parity++) {
                boolean high = random.nextBoolean();
                double kg = level[parity - 1] + cowKg + (high ? 300 : 0) + 500 * random.nextGaussian();
                lactations.add(new CompletedLactation("cow" + cow, parity, high ? "A" : "B", kg));
                if (kg < level[parity - 1] + 150 && random.nextInt(4) > 0) {
                    break;
                }
            }
        }
        ParityFactors factors = ParityFactorLearning.MIXED_MODEL.learn(lactations, 0.5, 3);
        // true factors at the mean group: 8150 / 6150, 8150 / 7650; plain means are off by more than these limits
        assertThat(factors.of(1).orElseThrow()).as("seed " + SEED).isCloseTo(8150.0 / 6150, within(0.012));
        assertThat(factors.of(2).orElseThrow()).as("seed " + SEED).isCloseTo(8150.0 / 7650, within(0.012));
        assertThat(factors.of(3).orElseThrow()).isEqualTo(1);
        assertThat(factors.of(9)).isEqualTo(factors.of(3));
        double first = mean(lactations, 1);
        double third = mean(lactations, 3);
        assertThat(third / first - 8150.0 / 6150).as("plain means").isGreaterThan(0.02);
        assertThat(factors.source()).contains(Integer.toString(lactations.size()));
    }

    private static double mean(List<CompletedLactation> lactations, int parity) {
        return lactations.stream()
                .filter(lactation -> lactation.parity() == parity)
                .mapToDouble(CompletedLactation::yieldKg)
                .average()
                .orElseThrow();
    }

    @Test
    void withoutRandomVariationTheFactorsAreExact() {
        List<CompletedLactation> lactations = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            lactations.add(new CompletedLactation("c" + i, 1, "g" + i % 2, i % 2 == 0 ? 6000 : 6400));
            lactations.add(new CompletedLactation("c" + i, 2, "g" + i % 2, i % 2 == 0 ? 7600 : 8000));
        }
        ParityFactors factors = ParityFactorLearning.MIXED_MODEL.learn(lactations, 0.4, 2);
        assertThat(factors.of(1).orElseThrow()).isCloseTo(7800.0 / 6200, within(1e-6));
    }

    @Test
    void aParityWithFewLactationsOrWithoutACommonGroupGetsNoFactor() {
        List<CompletedLactation> lactations = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            lactations.add(new CompletedLactation("a" + i, 1, "g", 6000));
            lactations.add(new CompletedLactation("b" + i, 3, "alone", 9000));
            if (i < 29) {
                lactations.add(new CompletedLactation("c" + i, 2, "g", 7000));
            }
        }
        ParityFactors factors = ParityFactorLearning.MIXED_MODEL.learn(lactations, 0.5, 3);
        assertThat(factors.factorByParity().keySet()).containsExactly(1);
        lactations.add(new CompletedLactation("c29", 2, "g", 7000));
        assertThat(ParityFactorLearning.MIXED_MODEL
                        .learn(lactations, 0.5, 3)
                        .factorByParity()
                        .keySet())
                .containsExactly(1, 2);
        lactations.add(new CompletedLactation("d", 2, "alone", 9000));
        assertThat(ParityFactorLearning.MIXED_MODEL
                        .learn(lactations, 0.5, 3)
                        .factorByParity()
                        .keySet())
                .containsExactly(1, 2, 3);
        assertThat(ParityFactorLearning.MIXED_MODEL.learn(List.of(), 0.5, 3).of(1))
                .isEmpty();
    }

    @Test
    void learningParametersOutsideAreRefused() {
        assertThatThrownBy(() -> ParityFactorLearning.MIXED_MODEL.learn(List.of(), 0, 3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ParityFactorLearning.MIXED_MODEL.learn(List.of(), 1, 3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ParityFactorLearning.MIXED_MODEL.learn(List.of(), 0.5, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aMatureEquivalentIsMadeOnlyWithAFactorThatWasGiven() {
        ParityFactors factors = ParityFactors.parse(
                List.of("# from the user", "parity,factor", "", "1, 1.27", " 2 ,1.08", "4,1"), "the user's table");
        Figure yield = TestIntervalMethod.WHOLE_LACTATION
                .accumulate(Lactation.inMilk(1, CALVING, flat(CALVING, 20, 50)), CALVING.plusDays(50))
                .milk();
        Figure first = MatureEquivalent.by(factors).of(yield, 1, CALVING.plusDays(50));
        assertThat(first.orThrow()).isCloseTo(1270, within(1e-9));
        assertThat(first.unit()).isEqualTo("kg");
        assertThat(first.explanation().parts().get(0).what()).isEqualTo("1000.0 kg x 1.2700 (the user's table)");
        assertThat(MatureEquivalent.by(factors)
                        .of(yield, 7, CALVING.plusDays(50))
                        .orThrow())
                .isCloseTo(1000, within(1e-9));
        Figure third = MatureEquivalent.by(factors).of(yield, 3, CALVING.plusDays(50));
        assertThat(codes(third)).containsExactly(FindingCode.NO_FACTOR);
        assertThat(third.findings().get(0).expected()).hasValue("one of [1, 2, 4]");
        assertThat(MatureEquivalent.by(factors).citation().place()).contains("the user's table");
        assertThat(factors.howKnown()).isEqualTo(HowKnown.TRANSCRIBED);
        Figure none = TestIntervalMethod.WHOLE_LACTATION
                .accumulate(Lactation.inMilk(1, CALVING, List.of()), CALVING.plusDays(50))
                .milk();
        assertThat(MatureEquivalent.by(factors)
                        .of(none, 1, CALVING.plusDays(50))
                        .value())
                .isEmpty();
    }

    @Test
    void aTableOfFactorsThatCannotBeReadNamesTheLine() {
        assertThatThrownBy(() -> ParityFactors.parse(List.of("1,1.3", "two,1"), "x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("line 2");
        assertThatThrownBy(() -> ParityFactors.parse(List.of("1,1.3", "1,1.2"), "x"))
                .hasMessageContaining("line 2");
        assertThatThrownBy(() -> ParityFactors.parse(List.of("1"), "x")).hasMessageContaining("line 1");
        assertThatThrownBy(() -> ParityFactors.parse(List.of("1,0"), "x")).hasMessageContaining("above 0");
        assertThatThrownBy(() -> ParityFactors.parse(List.of("0,1"), "x")).hasMessageContaining("from 1");
        assertThat(ParityFactors.parse(List.of(), "x").of(1)).isEmpty();
        assertThat(new ParityFactors(new TreeMap<>(), 1, "x", HowKnown.OURS).of(3))
                .isEmpty();
    }
}
