package org.pailbook.lactation.accumulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class TestIntervalLawTest {
    private static final long SEED = 305;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 10);
    private static final LocalDate LATER = CALVING.plusDays(700);

    /** Without the note that a lactation still going on is counted to its last test, which most of these are. */
    private static List<FindingCode> codes(Figure figure) {
        return figure.findings().stream()
                .map(Finding::code)
                .filter(code -> code != FindingCode.COUNTED_TO_LAST_TEST)
                .toList();
    }

    private static List<TestDay> randomTests(Random random, double kgFactor) {
        List<TestDay> tests = new ArrayList<>();
        int day = 5 + random.nextInt(30);
        int count = 1 + random.nextInt(12);
        for (int i = 0; i < count; i++) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), kgFactor * (5 + 40 * random.nextDouble()))
                    .withFatPct(3 + 3 * random.nextDouble())
                    .withProteinPct(2.5 + 2 * random.nextDouble()));
            day += 15 + random.nextInt(40);
        }
        return tests;
    }

    private static Lactation ended(List<TestDay> tests, Random random) {
        LocalDate end = tests.get(tests.size() - 1).date().plusDays(random.nextInt(40));
        return new Lactation(2, CALVING, Optional.of(end), tests);
    }

    @Test
    void totalOfTheIntervalsIsTheTotalOfTheLactation() {
        Random random = new Random(SEED);
        for (int i = 0; i < 300; i++) {
            Lactation lactation = ended(randomTests(random, 1), random);
            for (YieldAccumulation method : YieldAccumulations.all()) {
                AccumulatedYield yield = method.accumulate(lactation, LATER);
                for (Figure figure :
                        List.of(yield.milk(), yield.fat(), yield.protein(), yield.fatPct(), yield.proteinPct())) {
                    assertThat(figure.explanation().total())
                            .as("seed " + SEED + ", " + method.id())
                            .isEqualTo(figure.orThrow());
                }
            }
        }
    }

    @Test
    void twiceTheWeightsAreTwiceTheYieldAndTheSamePercent() {
        for (int i = 0; i < 200; i++) {
            Lactation once = ended(randomTests(new Random(SEED + i), 1), new Random(i));
            Lactation twice = ended(randomTests(new Random(SEED + i), 2), new Random(i));
            for (YieldAccumulation method : YieldAccumulations.all()) {
                AccumulatedYield one = method.accumulate(once, LATER);
                AccumulatedYield two = method.accumulate(twice, LATER);
                assertThat(two.milk().orThrow())
                        .as("seed " + (SEED + i))
                        .isCloseTo(2 * one.milk().orThrow(), within(1e-9));
                assertThat(two.fat().orThrow()).isCloseTo(2 * one.fat().orThrow(), within(1e-9));
                assertThat(two.fatPct().orThrow()).isCloseTo(one.fatPct().orThrow(), within(1e-12));
            }
        }
    }

    @Test
    void movingAllDatesChangesNothing() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100; i++) {
            Lactation lactation = ended(randomTests(random, 1), random);
            List<TestDay> moved = lactation.testDays().stream()
                    .map(test -> new TestDay(
                            test.date().plusDays(1000),
                            test.milkKg(),
                            test.fatPct(),
                            test.proteinPct(),
                            test.lactosePct(),
                            test.sccThousandPerMl()))
                    .toList();
            Lactation later =
                    new Lactation(2, CALVING.plusDays(1000), lactation.endDate().map(end -> end.plusDays(1000)), moved);
            assertThat(TestIntervalMethod.STANDARD_305
                            .accumulate(later, LATER.plusDays(1000))
                            .milk()
                            .orThrow())
                    .as("seed " + SEED)
                    .isEqualTo(TestIntervalMethod.STANDARD_305
                            .accumulate(lactation, LATER)
                            .milk()
                            .orThrow());
        }
    }

    @Test
    void theOrderInWhichTestsAreGivenDoesNotMatter() {
        Random random = new Random(SEED);
        List<TestDay> tests = randomTests(random, 1);
        List<TestDay> shuffled = new ArrayList<>(tests);
        Collections.shuffle(shuffled, random);
        assertThat(TestIntervalMethod.STANDARD_305
                        .accumulate(Lactation.inMilk(1, CALVING, shuffled), LATER)
                        .milk()
                        .orThrow())
                .isEqualTo(TestIntervalMethod.STANDARD_305
                        .accumulate(Lactation.inMilk(1, CALVING, tests), LATER)
                        .milk()
                        .orThrow());
    }

    @Test
    void aTestOnTheStraightLineBetweenTwoOthersChangesNothing() {
        List<TestDay> two = List.of(TestDay.ofMilk(CALVING.plusDays(20), 30), TestDay.ofMilk(CALVING.plusDays(60), 26));
        List<TestDay> three = new ArrayList<>(two);
        three.add(TestDay.ofMilk(CALVING.plusDays(40), 28));
        assertThat(milk(three)).isCloseTo(milk(two), within(1e-9));
    }

    private static double milk(List<TestDay> tests) {
        return TestIntervalMethod.STANDARD_305
                .accumulate(Lactation.inMilk(1, CALVING, tests), LATER)
                .milk()
                .orThrow();
    }

    @Test
    void aCowInMilkAccumulatesToHerLastTestDay() {
        List<TestDay> tests =
                List.of(TestDay.ofMilk(CALVING.plusDays(20), 30), TestDay.ofMilk(CALVING.plusDays(50), 30));
        AccumulatedYield yield =
                TestIntervalMethod.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, tests), CALVING.plusDays(80));
        assertThat(yield.toDaysInMilk()).isEqualTo(50);
        assertThat(yield.milk().orThrow()).isCloseTo(1500, within(1e-9));
        assertThat(yield.milk().findings()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.COUNTED_TO_LAST_TEST);
            assertThat(finding.seen()).hasValue("day 50 of 80");
        });
        AccumulatedYield onTheTestDay =
                TestIntervalMethod.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, tests), CALVING.plusDays(50));
        assertThat(onTheTestDay.milk().findings()).isEmpty();
    }

    @Test
    void theFigureOfAnEarlierDayKnowsNothingOfLaterTestsOrALaterEnd() {
        Lactation whole = new Lactation(
                1,
                CALVING,
                Optional.of(CALVING.plusDays(100)),
                List.of(TestDay.ofMilk(CALVING.plusDays(20), 30), TestDay.ofMilk(CALVING.plusDays(90), 20)));
        AccumulatedYield then = TestIntervalMethod.STANDARD_305.accumulate(whole, CALVING.plusDays(60));
        assertThat(then.toDaysInMilk()).isEqualTo(20);
        assertThat(then.milk().orThrow()).isCloseTo(600, within(1e-9));
        assertThat(then.milk().asOf()).isEqualTo(CALVING.plusDays(60));
        assertThat(then.milk().inputs()).containsExactly(UsedInput.used("test-day", CALVING.plusDays(20)));
    }

    @Test
    void withoutAUsableTestThereIsNoValue() {
        Lactation lactation = Lactation.inMilk(1, CALVING, List.of(TestDay.ofMilk(CALVING.plusDays(2), 12)));
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(lactation, LATER);
        for (Figure figure : List.of(yield.milk(), yield.fat(), yield.protein(), yield.fatPct(), yield.proteinPct())) {
            assertThat(figure.value()).isEmpty();
            assertThat(codes(figure)).contains(FindingCode.NO_TEST_DAYS, FindingCode.TEST_ON_COLOSTRUM_DAYS);
        }
        assertThat(yield.daysCovered()).isZero();
        assertThat(yield.milkTests()).isZero();
    }

    @Test
    void aFirstTestAfterDay40IsLateAndOneAfterDay75GivesNoValue() {
        assertThat(codes(firstTestOn(40))).isEmpty();
        assertThat(codes(firstTestOn(41))).containsExactly(FindingCode.FIRST_TEST_LATE);
        assertThat(firstTestOn(41).value()).isPresent();
        assertThat(codes(firstTestOn(75))).containsExactly(FindingCode.FIRST_TEST_LATE);
        assertThat(codes(firstTestOn(76))).containsExactly(FindingCode.FIRST_TEST_TOO_LATE);
        assertThat(firstTestOn(76).value()).isEmpty();
        assertThat(firstTestOn(75).findings().get(0).expected()).hasValue("day 40 or before");
        assertThat(firstTestOn(76).findings().get(0).expected()).hasValue("day 75 or before");
        assertThat(firstTestOn(41).findings().get(0).date()).hasValue(CALVING.plusDays(41));
    }

    @Test
    void aTestOnDay305ItselfEndsTheStandardLactation() {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(CALVING.plusDays(40), 20),
                TestDay.ofMilk(CALVING.plusDays(305), 10),
                TestDay.ofMilk(CALVING.plusDays(335), 10));
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(
                new Lactation(1, CALVING, Optional.of(CALVING.plusDays(340)), tests), LATER);
        assertThat(yield.milkTests()).isEqualTo(2);
        assertThat(yield.milk().explanation().parts()).hasSize(2);
        assertThat(yield.milk().orThrow()).isCloseTo(800 + 265 * 15, within(1e-9));
    }

    @Test
    void anEstimatedEndThatDoesNotMatterBeforeDay305IsNotMentioned() {
        List<TestDay> tests = new ArrayList<>();
        for (int day = 35; day <= 305; day += 30) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), 20));
        }
        Lactation ended = Lactation.inMilk(1, CALVING, tests).withEstimatedEndDate(CALVING.plusDays(320));
        assertThat(codes(
                        TestIntervalMethod.STANDARD_305.accumulate(ended, LATER).milk()))
                .isEmpty();
        assertThat(codes(TestIntervalMethod.WHOLE_LACTATION
                        .accumulate(ended, LATER)
                        .milk()))
                .containsExactly(FindingCode.ESTIMATED_END);
    }

    private static Figure firstTestOn(int day) {
        return TestIntervalMethod.STANDARD_305
                .accumulate(Lactation.inMilk(1, CALVING, List.of(TestDay.ofMilk(CALVING.plusDays(day), 30))), LATER)
                .milk();
    }

    @Test
    void anIntervalOver75DaysIsBridgedAndFlaggedAlsoAtTheEnd() {
        Lactation gap = Lactation.inMilk(
                1,
                CALVING,
                List.of(TestDay.ofMilk(CALVING.plusDays(20), 30), TestDay.ofMilk(CALVING.plusDays(96), 20)));
        Figure flagged = TestIntervalMethod.STANDARD_305.accumulate(gap, LATER).milk();
        assertThat(codes(flagged)).containsExactly(FindingCode.LONG_INTERVAL);
        assertThat(flagged.findings().get(0).seen()).hasValue("76 days without a test");
        assertThat(flagged.orThrow()).isCloseTo(600 + 76 * 25, within(1e-9));
        Lactation atTheLimit = Lactation.inMilk(
                1,
                CALVING,
                List.of(TestDay.ofMilk(CALVING.plusDays(20), 30), TestDay.ofMilk(CALVING.plusDays(95), 20)));
        assertThat(codes(TestIntervalMethod.STANDARD_305
                        .accumulate(atTheLimit, LATER)
                        .milk()))
                .isEmpty();
        Lactation longEnd = new Lactation(
                1, CALVING, Optional.of(CALVING.plusDays(110)), List.of(TestDay.ofMilk(CALVING.plusDays(30), 20)));
        assertThat(codes(TestIntervalMethod.STANDARD_305
                        .accumulate(longEnd, LATER)
                        .milk()))
                .containsExactly(FindingCode.LONG_INTERVAL);
    }

    @Test
    void anEstimatedEndIsSaidWithTheFigure() {
        Lactation recorded = IcarExample.lactation();
        Lactation estimated = recorded.withEstimatedEndDate(IcarExample.END);
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(estimated, IcarExample.END);
        assertThat(codes(yield.milk())).containsExactly(FindingCode.ESTIMATED_END);
        assertThat(yield.milk().orThrow())
                .isEqualTo(TestIntervalMethod.STANDARD_305
                        .accumulate(recorded, IcarExample.END)
                        .milk()
                        .orThrow());
    }

    @Test
    void testsAfterDay305OtherThanTheNextAreNamedAsLeftOut() {
        List<TestDay> tests = new ArrayList<>();
        for (int day = 20; day <= 380; day += 30) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), 25));
        }
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, tests), LATER);
        assertThat(yield.milk().orThrow()).isCloseTo(305 * 25, within(1e-9));
        assertThat(yield.milkTests()).isEqualTo(11);
        assertThat(yield.milk().inputs().get(11))
                .isEqualTo(UsedInput.leftOut("test-day", CALVING.plusDays(350), "after-day-305"));
        assertThat(yield.milk().inputs().get(10).isUsed()).isTrue();
        assertThat(yield.milk().inputs()).hasSize(13);
    }

    @Test
    void fatOfTestsWithoutASampleIsSummedOverTheOthersOrInterpolatedInPercent() {
        // by hand; 20, 50 and 80 days, 30, 30 and 10 kg, 4 % at both ends
        List<TestDay> tests = List.of(
                TestDay.ofMilk(CALVING.plusDays(20), 30).withFatPct(4),
                TestDay.ofMilk(CALVING.plusDays(50), 30),
                TestDay.ofMilk(CALVING.plusDays(80), 10).withFatPct(4));
        Lactation lactation = Lactation.inMilk(1, CALVING, tests);
        AccumulatedYield own = TestIntervalMethod.STANDARD_305.accumulate(lactation, LATER);
        AccumulatedYield percent = TestIntervalPercentInterpolated.STANDARD_305.accumulate(lactation, LATER);
        // 20 x 1.2 + 60 x (1.2 + 0.4) / 2
        assertThat(own.fat().orThrow()).isCloseTo(72, within(1e-9));
        // 4 % of 20 x 30 + 30 x 30 + 30 x 20
        assertThat(percent.fat().orThrow()).isCloseTo(84, within(1e-9));
        assertThat(percent.fatPct().orThrow()).isCloseTo(4, within(1e-12));
        assertThat(percent.milk().orThrow()).isEqualTo(own.milk().orThrow());
        assertThat(own.fatTests()).isEqualTo(2);
        assertThat(codes(own.fat())).containsExactly(FindingCode.FAT_MISSING);
        assertThat(own.fat().findings().get(0).seen()).hasValue("2 of 3 tests");
        assertThat(codes(own.milk())).isEmpty();
    }

    @Test
    void aPercentageIsDrawnStraightOverTimeAndFlatAtBothEnds() {
        // no sample at days 10, 30 (a third of the way from 20 to 50) and 80; 3 % on day 20, 6 % on day 50: 3, 3, 4, 6,
        // 6 %
        List<TestDay> tests = List.of(
                TestDay.ofMilk(CALVING.plusDays(10), 10),
                TestDay.ofMilk(CALVING.plusDays(20), 10).withProteinPct(3),
                TestDay.ofMilk(CALVING.plusDays(30), 10),
                TestDay.ofMilk(CALVING.plusDays(50), 10).withProteinPct(6),
                TestDay.ofMilk(CALVING.plusDays(80), 10));
        AccumulatedYield yield =
                TestIntervalPercentInterpolated.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, tests), LATER);
        // 10 x .3 + 10 x .3 + 10 x .35 + 20 x .5 + 30 x .6
        assertThat(yield.protein().orThrow()).isCloseTo(37.5, within(1e-9));
        assertThat(codes(yield.protein())).containsExactly(FindingCode.PROTEIN_MISSING);
    }

    @Test
    void withAllSamplesThereBothRulesAgree() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100; i++) {
            Lactation lactation = ended(randomTests(random, 1), random);
            AccumulatedYield own = TestIntervalMethod.STANDARD_305.accumulate(lactation, LATER);
            AccumulatedYield percent = TestIntervalPercentInterpolated.STANDARD_305.accumulate(lactation, LATER);
            assertThat(percent.fat().orThrow())
                    .as("seed " + SEED)
                    .isEqualTo(own.fat().orThrow());
            assertThat(percent.protein().orThrow()).isEqualTo(own.protein().orThrow());
        }
    }

    @Test
    void aLateFirstSampleBlocksFatByOwnIntervalsButNotByPercent() {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(CALVING.plusDays(20), 30),
                TestDay.ofMilk(CALVING.plusDays(50), 30),
                TestDay.ofMilk(CALVING.plusDays(80), 30).withFatPct(4));
        Lactation lactation = Lactation.inMilk(1, CALVING, tests);
        AccumulatedYield own = TestIntervalMethod.STANDARD_305.accumulate(lactation, LATER);
        AccumulatedYield percent = TestIntervalPercentInterpolated.STANDARD_305.accumulate(lactation, LATER);
        assertThat(own.milk().value()).isPresent();
        assertThat(own.fat().value()).isEmpty();
        assertThat(own.fatPct().value()).isEmpty();
        assertThat(codes(own.fat())).contains(FindingCode.FIRST_TEST_TOO_LATE, FindingCode.FAT_MISSING);
        assertThat(percent.fat().orThrow()).isCloseTo(80 * 30 * 0.04, within(1e-9));
        assertThat(codes(percent.fat())).contains(FindingCode.FIRST_TEST_LATE);
    }

    @Test
    void aPercentageOutsideTheAcceptedRangeIsKeptButNotUsed() {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(CALVING.plusDays(20), 30).withFatPct(4).withProteinPct(9.0),
                TestDay.ofMilk(CALVING.plusDays(50), 30).withFatPct(38).withProteinPct(1.0),
                TestDay.ofMilk(CALVING.plusDays(80), 30).withFatPct(12.0).withProteinPct(0.99));
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, tests), LATER);
        assertThat(yield.fatTests()).isEqualTo(2);
        assertThat(yield.proteinTests()).isEqualTo(2);
        assertThat(codes(yield.fat())).containsExactly(FindingCode.OUT_OF_RANGE, FindingCode.FAT_MISSING);
        assertThat(yield.fat().findings().get(0).seen()).hasValue("38.0 %");
    }

    @Test
    void whenMilkIsBlockedSoAreFatAndPercent() {
        Lactation lactation = Lactation.inMilk(
                1, CALVING, List.of(TestDay.ofMilk(CALVING.plusDays(90), 30).withFatPct(4)));
        AccumulatedYield yield = TestIntervalPercentInterpolated.STANDARD_305.accumulate(lactation, LATER);
        assertThat(yield.fat().value()).isEmpty();
        assertThat(codes(yield.fatPct())).contains(FindingCode.FIRST_TEST_TOO_LATE);
    }

    @Test
    void theBareSumIsTheFigureToTheLastBit() {
        Random random = new Random(SEED);
        for (int i = 0; i < 300; i++) {
            Lactation lactation = ended(randomTests(random, 1), random);
            AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(lactation, LATER);
            int n = lactation.testDays().size();
            double[] days = new double[n];
            double[] kg = new double[n];
            for (int j = 0; j < n; j++) {
                days[j] = lactation.daysInMilk(lactation.testDays().get(j).date());
                kg[j] = lactation.testDays().get(j).milkKg().orElseThrow();
            }
            assertThat(TestIntervalMethod.sumKg(days, kg, n, yield.toDaysInMilk()))
                    .as("seed " + SEED)
                    .isEqualTo(yield.milk().orThrow());
        }
    }

    @Test
    void theBareSumRefusesArraysShorterThanTheTests() {
        double[] two = {10, 20};
        assertThatThrownBy(() -> TestIntervalMethod.sumKg(two, new double[1], 2, 30))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> TestIntervalMethod.sumKg(new double[1], two, 2, 30))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> TestIntervalMethod.sumKg(two, two, 0, 30))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(TestIntervalMethod.sumKg(two, two, 2, 20)).isEqualTo(100 + 150);
        assertThat(TestIntervalMethod.sumKg(two, two, 1, 20)).isEqualTo(200);
    }

    @Test
    void everyMethodIsFoundByItsId() {
        assertThat(YieldAccumulations.all())
                .extracting(YieldAccumulation::id)
                .doesNotHaveDuplicates()
                .contains("test-interval");
        for (YieldAccumulation method : YieldAccumulations.all()) {
            assertThat(YieldAccumulations.byId(method.id())).containsSame(method);
            assertThat(method.version()).isEqualTo(1);
            assertThat(method.citation().text()).isNotBlank();
        }
        assertThat(YieldAccumulations.byId("none")).isEmpty();
    }

    @Test
    void missingFatNeverLooksLikeZeroFat() {
        TestDay test = new TestDay(
                CALVING.plusDays(20),
                OptionalDouble.of(30),
                OptionalDouble.empty(),
                OptionalDouble.of(3.4),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        AccumulatedYield yield =
                TestIntervalMethod.STANDARD_305.accumulate(Lactation.inMilk(1, CALVING, List.of(test)), LATER);
        assertThat(yield.fat().value()).isEmpty();
        assertThat(codes(yield.fat())).containsExactly(FindingCode.FAT_NEEDED);
        assertThat(yield.protein().orThrow()).isCloseTo(20 * 30 * 0.034, within(1e-9));
        assertThat(codes(yield.protein())).isEmpty();
    }
}
