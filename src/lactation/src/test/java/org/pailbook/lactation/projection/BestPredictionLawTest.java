package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class BestPredictionLawTest {
    private static final long SEED = 42;
    private static final LactationStandard STANDARD = WorkedCow.standard(0.995).withHerdLevelSdKgPerDay(1.8);
    private static final double[] SIX = {20, 24, 50, 30, 80, 29, 110, 27, 140, 26, 170, 25};

    @Test
    void withoutATestTheProjectionIsTheMeanOfTheGroup() {
        Projection305 projection = WorkedCow.project(STANDARD);
        assertThat(projection.milk305Kg()).isEqualTo(STANDARD.meanTotalKg(305));
        assertThat(projection.reliabilityShare()).isZero();
        assertThat(projection.producedKg()).isZero();
        // 1'V1 + 305^2 v_h
        assertThat(projection.standardErrorKg())
                .isCloseTo(Math.hypot(Math.sqrt(STANDARD.spread().varianceOfTotal(305)), 305 * 1.8), within(1e-9));
        assertThat(codes(projection)).contains(FindingCode.NO_TEST_YET);
    }

    @Test
    void oneMoreTestNeverLowersTheReliability() {
        Random random = new Random(SEED);
        for (int cow = 0; cow < 200; cow++) {
            double[] tests = randomTests(random, 2 + random.nextInt(11));
            double[] withoutLast = Arrays.copyOf(tests, tests.length - 2);
            assertThat(WorkedCow.project(STANDARD, tests).reliabilityShare())
                    .as("seed %d, cow %d", SEED, cow)
                    .isGreaterThan(WorkedCow.project(STANDARD, withoutLast).reliabilityShare());
        }
    }

    @Test
    void aTestOfEndlessVarianceIsAsGoodAsNone() {
        Lactation lactation = WorkedCow.withTests(SIX);
        Projection305 doubted = new BestPrediction()
                .project(
                        lactation,
                        STANDARD,
                        WorkedCow.lastDate(lactation),
                        test -> test.milkKg().orElseThrow() == 29 ? 1e12 : 0);
        Projection305 without = WorkedCow.project(STANDARD, 20, 24, 50, 30, 110, 27, 140, 26, 170, 25);
        assertThat(doubted.milk305Kg()).isCloseTo(without.milk305Kg(), within(1e-6));
        assertThat(doubted.standardErrorKg()).isCloseTo(without.standardErrorKg(), within(1e-6));
    }

    @Test
    void twiceTheMilkIsTwiceTheProjectionAndTwiceTheInterval() {
        LactationStandard twice = LactationStandard.of(
                        "twice",
                        WorkedCow.MADE_UP,
                        day -> 2 * STANDARD.meanKg(day),
                        DailySpread.constant(10, 0.995, 0.20))
                .withHerdLevelSdKgPerDay(3.6);
        double[] doubled = SIX.clone();
        for (int i = 1; i < doubled.length; i += 2) {
            doubled[i] *= 2;
        }
        Figure once = WorkedCow.project(STANDARD, SIX).milk305();
        Figure two = WorkedCow.project(twice, doubled).milk305();
        assertThat(two.orThrow()).isCloseTo(2 * once.orThrow(), within(1e-8));
        for (int i = 0; i < 2; i++) {
            assertThat(two.intervals().get(i).low())
                    .isCloseTo(2 * once.intervals().get(i).low(), within(1e-8));
            assertThat(two.intervals().get(i).high())
                    .isCloseTo(2 * once.intervals().get(i).high(), within(1e-8));
        }
    }

    @Test
    void weightsOfAllDaysAddUpToTheTotalWithNothingLeftUnsure() {
        Random random = new Random(SEED);
        double[] daily = new double[2 * 301];
        double sum = 0;
        for (int i = 0; i < 301; i++) {
            daily[2 * i] = 5 + i;
            daily[2 * i + 1] = 10 + 30 * random.nextDouble();
            sum += daily[2 * i + 1];
        }
        Projection305 projection = WorkedCow.project(WorkedCow.standard(0.995, 0), daily);
        // days 1 to 4 are colostrum and take no part: what is expected for them is all that is not measured
        double[] days = projection.dailyMilkKg();
        double firstFour = days[0] + days[1] + days[2] + days[3];
        assertThat(projection.milk305Kg()).isCloseTo(sum + firstFour, within(1e-6));
        assertThat(projection.standardErrorKg()).isLessThan(10);
    }

    // derived: with r = 1, e = 0 and a spread in proportion to the mean, one test predicts the rest as the mean curve's
    // share of it
    @Test
    void aSingleTestThatLastsForeverExtendsByTheRatioOfTheMeanCurve() {
        double[] sd = new double[305];
        for (int day = 1; day <= 305; day++) {
            sd[day - 1] = 0.2 * STANDARD.meanKg(day);
        }
        LactationStandard proportional =
                LactationStandard.of("proportional", WorkedCow.MADE_UP, STANDARD::meanKg, DailySpread.ofDays(sd, 1, 0));
        Projection305 projection = WorkedCow.project(proportional, 60, 33.3);
        double restOfMean = STANDARD.meanTotalKg(305) - STANDARD.meanTotalKg(60);
        assertThat(projection.expectedRestKg()).isCloseTo(33.3 * restOfMean / STANDARD.meanKg(60), within(1e-8));
    }

    @Test
    void partsOfTheExplanationAddUpToTheFigure() {
        Random random = new Random(SEED);
        for (int cow = 0; cow < 100; cow++) {
            Figure figure = WorkedCow.project(STANDARD, randomTests(random, random.nextInt(12)))
                    .milk305();
            assertThat(figure.explanation().total())
                    .as("seed %d, cow %d", SEED, cow)
                    .isEqualTo(figure.orThrow());
        }
    }

    @Test
    void daysAddUpToTheTotalAndProducedAndRestToo() {
        Projection305 projection = WorkedCow.project(STANDARD, SIX);
        assertThat(Arrays.stream(projection.dailyMilkKg()).sum()).isCloseTo(projection.milk305Kg(), within(1e-8));
        assertThat(Arrays.stream(projection.dailyMilkKg()).limit(170).sum())
                .isCloseTo(projection.producedKg(), within(1e-8));
        assertThat(projection.producedKg() + projection.expectedRestKg())
                .isCloseTo(projection.milk305Kg(), within(1e-9));
        assertThat(projection.milkToDay(170).orThrow()).isCloseTo(projection.producedKg(), within(1e-9));
    }

    @Test
    void aMeasuredDayIsExpectedAsMeasuredAndWithoutDoubt() {
        Projection305 projection = WorkedCow.project(STANDARD, SIX);
        DayExpectation day = projection.onDate(WorkedCow.CALVING.plusDays(80)).orElseThrow();
        assertThat(day.milkKg()).isCloseTo(29, within(1e-9));
        assertThat(day.interval95().high() - day.interval95().low()).isLessThan(1e-4);
    }

    @Test
    void nextTestDayIsFourWeeksOnWithABandThatHoldsTheDailyError() {
        Lactation lactation = WorkedCow.withTests(SIX);
        Projection305 projection = new BestPrediction().project(lactation, STANDARD, WorkedCow.CALVING.plusDays(199));
        DayExpectation next = projection.nextTestDay().orElseThrow();
        assertThat(next.daysInMilk()).isEqualTo(170 + 2 * 28);
        // at least e x 25 kg squared stays unsure however many tests there are
        assertThat(next.interval80().high() - next.milkKg()).isGreaterThan(1.28 * Math.sqrt(0.20 * 25));
        assertThat(projection.dailyBand(Coverage.EIGHTY_PERCENT).get(225)).isEqualTo(next.interval80());
    }

    @Test
    void testsAfterDay305StillCount() {
        double[] seven = Arrays.copyOf(SIX, SIX.length + 2);
        seven[12] = 330;
        seven[13] = 25;
        Projection305 with = WorkedCow.project(STANDARD, seven);
        Projection305 without = WorkedCow.project(STANDARD, SIX);
        assertThat(with.milk305Kg()).isGreaterThan(without.milk305Kg());
        assertThat(with.reliabilityShare()).isGreaterThan(without.reliabilityShare());
        assertThat(with.producedThroughDay()).isEqualTo(305);
    }

    @Test
    void shiftingAllDatesChangesNothing() {
        Lactation lactation = WorkedCow.withTests(SIX);
        LocalDate calving = LocalDate.of(2019, 12, 25);
        List<TestDay> moved = lactation.testDays().stream()
                .map(test -> TestDay.ofMilk(
                        calving.plusDays(lactation.daysInMilk(test.date())),
                        test.milkKg().orElseThrow()))
                .toList();
        Projection305 shifted =
                new BestPrediction().project(Lactation.inMilk(2, calving, moved), STANDARD, calving.plusDays(170));
        assertThat(shifted.milk305Kg())
                .isEqualTo(WorkedCow.project(STANDARD, SIX).milk305Kg());
    }

    @Test
    void twoTestsOnOneDayCountOnce() {
        Figure twice = WorkedCow.project(STANDARD, 20, 22, 20, 24, 50, 30).milk305();
        assertThat(twice.orThrow())
                .isEqualTo(WorkedCow.project(STANDARD, 20, 24, 50, 30).milk305Kg());
        assertThat(twice.findings()).extracting(Finding::code).contains(FindingCode.DUPLICATE_TEST_DAY);
    }

    @Test
    void theLowerEndIsNotBelowWhatSheHasGiven() {
        // a poor cow, nearly done: her expectation falls to next to nothing, and what was weighed stays weighed
        LactationStandard steep = LactationStandard.of(
                        "steep",
                        WorkedCow.MADE_UP,
                        day -> Math.max(0.5, 30 - 0.1 * day),
                        DailySpread.constant(5, 0.995, 0.2))
                .withHerdLevelSdKgPerDay(4);
        double[] tests = new double[2 * 24];
        for (int i = 0; i < 24; i++) {
            tests[2 * i] = 5 + 7 * i;
            tests[2 * i + 1] = 20 - 0.6 * i;
        }
        Projection305 projection = WorkedCow.project(steep, tests);
        Interval interval = projection.milk305().interval(0.95).orElseThrow();
        Interval produced = projection
                .milkToDay(projection.producedThroughDay())
                .interval(0.95)
                .orElseThrow();
        assertThat(projection.milk305Kg() - 1.96 * projection.standardErrorKg()).isLessThan(produced.low());
        assertThat(interval.low()).isEqualTo(produced.low());
    }

    @Test
    void calibrationWidensTheInterval() {
        Lactation lactation = WorkedCow.withTests(20, 24, 50, 30);
        BestPrediction learned = new BestPrediction().withCalibration(IntervalCalibration.ofFactors(1.5, 1.3, 1.2));
        Projection305 wide = learned.project(lactation, STANDARD, WorkedCow.lastDate(lactation));
        Projection305 bare = WorkedCow.project(STANDARD, 20, 24, 50, 30);
        assertThat(wide.milk305Kg()).isEqualTo(bare.milk305Kg());
        assertThat(wide.standardErrorKg()).isCloseTo(1.2 * bare.standardErrorKg(), within(1e-9));
        assertThat(wide.milk305().interval(0.8).orElseThrow().high() - wide.milk305Kg())
                .isCloseTo(1.2 * 1.2815515655446004 * bare.standardErrorKg(), within(1e-9));
    }

    @Test
    void findingsSayWhatTheFigureRestsOn() {
        assertThat(codes(WorkedCow.project(STANDARD, 20, 24)))
                .containsExactly(FindingCode.FEW_TEST_DAYS, FindingCode.IF_MILKED_TO_305);
        assertThat(codes(WorkedCow.project(STANDARD, 90, 24, 170, 20)))
                .contains(FindingCode.FIRST_TEST_LATE, FindingCode.LONG_INTERVAL);
        Lactation ended = WorkedCow.withTests(SIX).withEndDate(WorkedCow.CALVING.plusDays(200));
        Projection305 projection = new BestPrediction().project(ended, STANDARD, WorkedCow.CALVING.plusDays(250));
        assertThat(codes(projection))
                .contains(FindingCode.LACTATION_ENDED)
                .doesNotContain(FindingCode.IF_MILKED_TO_305);
        assertThat(projection.nextTestDay()).isEmpty();
        Lactation other = WorkedCow.withTests(SIX);
        Projection305 pooled = new BestPrediction()
                .project(other, LactationStandards.forCow("Montbeliarde", 2), WorkedCow.lastDate(other));
        assertThat(codes(pooled)).contains(FindingCode.REFERENCE_OF_OTHER_BREED);
    }

    // 20,000 lactations drawn from the model itself: the share inside differs from the nominal one by no more than four
    // standard errors
    @Test
    void intervalsHoldAsOftenAsTheySayWhenTheModelIsTrue() {
        int lactations = 20_000;
        double r = 0.995;
        Random random = new Random(SEED);
        int[] inside80 = new int[4];
        int[] inside95 = new int[4];
        int[] numbersOfTests = {0, 1, 3, 8};
        for (int cow = 0; cow < lactations; cow++) {
            double herd = 1.8 * random.nextGaussian();
            double lasting = random.nextGaussian();
            double[] kg = new double[306];
            double truth = 0;
            for (int day = 1; day <= 305; day++) {
                kg[day] = STANDARD.meanKg(day)
                        + herd
                        + 5 * (Math.sqrt(0.8) * lasting + Math.sqrt(0.2) * random.nextGaussian());
                truth += kg[day];
                lasting = r * lasting + Math.sqrt(1 - r * r) * random.nextGaussian();
            }
            for (int i = 0; i < numbersOfTests.length; i++) {
                double[] tests = new double[2 * numbersOfTests[i]];
                for (int test = 0; test < numbersOfTests[i]; test++) {
                    tests[2 * test] = 18 + 30 * test;
                    tests[2 * test + 1] = kg[18 + 30 * test];
                }
                if (Arrays.stream(tests).anyMatch(value -> value < 3)) {
                    continue;
                }
                Projection305 projection = WorkedCow.project(STANDARD, tests);
                double z = Math.abs(truth - projection.milk305Kg()) / projection.standardErrorKg();
                inside80[i] += z <= Coverage.EIGHTY_PERCENT.normalMultiple() ? 1 : 0;
                inside95[i] += z <= Coverage.NINETY_FIVE_PERCENT.normalMultiple() ? 1 : 0;
            }
        }
        for (int i = 0; i < numbersOfTests.length; i++) {
            assertThat(inside80[i] / (double) lactations)
                    .as("seed %d, %d tests", SEED, numbersOfTests[i])
                    .isCloseTo(0.80, within(4 * Math.sqrt(0.8 * 0.2 / lactations)));
            assertThat(inside95[i] / (double) lactations)
                    .isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / lactations)));
        }
    }

    private static double[] randomTests(Random random, int tests) {
        double[] daysAndKg = new double[2 * tests];
        int day = 0;
        for (int i = 0; i < tests; i++) {
            day += 5 + random.nextInt(45);
            daysAndKg[2 * i] = day;
            daysAndKg[2 * i + 1] = 5 + 40 * random.nextDouble();
        }
        return daysAndKg;
    }

    private static List<FindingCode> codes(Projection305 projection) {
        return projection.milk305().findings().stream().map(Finding::code).toList();
    }
}
