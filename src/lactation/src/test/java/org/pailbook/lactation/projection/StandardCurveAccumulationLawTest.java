package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class StandardCurveAccumulationLawTest {
    private static final TraitStandards STANDARDS = LactationStandards.traitsForCow("HOL", 2);
    private static final LocalDate LATE = LocalDate.of(2025, 6, 1);

    static List<YieldAccumulation> methods() {
        return StandardCurveAccumulations.all(STANDARDS);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void aCowOnTheMeanCurveGivesItsSum(YieldAccumulation method) {
        int[] days = {8, 30, 61, 92, 130, 160, 195, 221, 250, 285};
        AccumulatedYield yield = method.accumulate(onTheMean(days), LATE);
        double mean = STANDARDS.first().meanTotalKg(285);
        // the interpolation draws straight pieces of at most 20 days, which miss a little of the bend before the peak
        double tolerance = method instanceof InterpolationWithStandardCurves ? 0.003 * mean : 1e-6;
        assertThat(yield.milk().orThrow()).isCloseTo(mean, within(tolerance));
        assertThat(yield.fat().orThrow())
                .isCloseTo(STANDARDS.standard(1).meanTotalKg(285), within(Math.max(1e-6, tolerance / 20)));
        assertThat(yield.toDaysInMilk()).isEqualTo(285);
        assertThat(yield.fatPct().orThrow())
                .isCloseTo(100 * yield.fat().orThrow() / yield.milk().orThrow(), within(1e-12));
        assertThat(yield.milkTests()).isEqualTo(10);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void partsAddUpAndMissingSamplesAreTold(YieldAccumulation method) {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(20), 35).withFatPct(4).withProteinPct(3.3),
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(55), 38),
                TestDay.ofMilk(WorkedCow.CALVING.plusDays(90), 33)
                        .withFatPct(25)
                        .withProteinPct(3.4));
        AccumulatedYield yield = method.accumulate(Lactation.inMilk(2, WorkedCow.CALVING, tests), LATE);
        assertThat(yield.milk().explanation().total()).isCloseTo(yield.milk().orThrow(), within(1e-8));
        assertThat(yield.fat().explanation().total()).isCloseTo(yield.fat().orThrow(), within(1e-8));
        assertThat(yield.fat().findings())
                .extracting(Finding::code)
                .contains(FindingCode.FAT_MISSING, FindingCode.OUT_OF_RANGE);
        assertThat(yield.fatTests()).isEqualTo(1);
        assertThat(yield.proteinTests()).isEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void withoutATestThereIsNoYieldToDate(YieldAccumulation method) {
        AccumulatedYield yield = method.accumulate(WorkedCow.withTests(), LATE);
        assertThat(yield.milk().value()).isEmpty();
        assertThat(yield.fatPct().value()).isEmpty();
        assertThat(yield.toDaysInMilk()).isZero();
    }

    @ParameterizedTest
    @MethodSource("methods")
    void anEndedLactationIsSummedToItsEnd(YieldAccumulation method) {
        Lactation ended = onTheMean(8, 30, 61, 92, 130).withEndDate(WorkedCow.CALVING.plusDays(140));
        assertThat(method.accumulate(ended, LATE).daysCovered()).isEqualTo(140);
        Lactation long305 = onTheMean(8, 100, 200, 290, 330);
        assertThat(method.accumulate(long305, LATE).toDaysInMilk()).isEqualTo(305);
    }

    @Test
    void bestPredictionToDateIsTheProducedPartOfTheProjection() {
        Lactation lactation = onTheMean(20, 50, 80);
        Projection305 projection = new BestPrediction().project(lactation, STANDARDS, LATE);
        AccumulatedYield yield = new BestPredictionToDate(STANDARDS).accumulate(lactation, LATE);
        assertThat(yield.milk().orThrow()).isCloseTo(projection.producedKg(), within(1e-9));
        assertThat(yield.milk().intervals()).hasSize(2);
    }

    // derived: a day between two tests is best prediction from these two alone
    @Test
    void aDerivedDayIsBestPredictionFromItsTwoNeighbours() {
        LactationStandard standard = STANDARDS.first();
        TreeMap<Integer, Double> measured = new TreeMap<>();
        measured.put(40, 44.0);
        measured.put(71, 35.5);
        Projection305 two = new BestPrediction().project(WorkedCow.withTests(40, 44, 71, 35.5), standard, LATE);
        double[] days = two.dailyMilkKg();
        for (int day : new int[] {1, 10, 40, 50, 70, 71, 90, 300}) {
            double derived = InterpolationWithStandardCurves.derived(day, measured, standard);
            if (day > 40 && day < 71) {
                assertThat(derived).isCloseTo(days[day - 1], within(1e-9));
            } else {
                TreeMap<Integer, Double> nearest = new TreeMap<>();
                int test = day <= 40 ? 40 : 71;
                nearest.put(test, measured.get(test));
                assertThat(derived)
                        .isCloseTo(
                                new BestPrediction()
                                        .project(WorkedCow.withTests(test, measured.get(test)), standard, LATE)
                                        .dailyMilkKg()[day - 1],
                                within(1e-9));
            }
        }
    }

    // (INT - 1) / 2 y_i + (INT + 1) / 2 y_(i+1) is the exact sum of the days of a straight line: ICAR Procedure 2 (from
    // memory), derived
    @Test
    void interpolationWithATestEveryDayIsTheSumOfTheWeights() {
        double[] daily = new double[2 * 56];
        double sum = 0;
        for (int i = 0; i < 56; i++) {
            daily[2 * i] = 5 + i;
            daily[2 * i + 1] = 25 + (i * 7 % 11);
            sum += daily[2 * i + 1];
        }
        Lactation lactation = WorkedCow.withTests(daily);
        AccumulatedYield yield = new InterpolationWithStandardCurves(STANDARDS).accumulate(lactation, LATE);
        TreeMap<Integer, Double> first = new TreeMap<>();
        first.put(5, 25.0);
        double one = InterpolationWithStandardCurves.derived(1, first, STANDARDS.first());
        // days 1 to 4 lie on a straight line from the derived day 1 to the weight of day 5
        double before = 4 * one + (25 - one) * (1 + 2 + 3) / 4.0;
        assertThat(yield.milk().orThrow()).isCloseTo(before + sum, within(1e-9));
    }

    @Test
    void multipleTraitProcedureFollowsACowWhoseCurveIsOfItsKind() {
        double[] weekly = new double[2 * 43];
        double sum = 0;
        for (int day = 1; day <= 299; day++) {
            sum += curve(day);
        }
        for (int i = 0; i < 43; i++) {
            weekly[2 * i] = 5 + 7 * i;
            weekly[2 * i + 1] = curve(5 + 7 * i);
        }
        AccumulatedYield yield = new MultipleTraitProcedure(STANDARDS).accumulate(WorkedCow.withTests(weekly), LATE);
        double groupMean = STANDARDS.first().meanTotalKg(299);
        assertThat(sum - groupMean).isGreaterThan(1500);
        assertThat(yield.milk().orThrow()).isCloseTo(sum, within(0.01 * sum));
        assertThat(yield.fat().orThrow()).isGreaterThan(STANDARDS.standard(1).meanTotalKg(299));
    }

    @Test
    void methodsAreFoundByTheirName() {
        assertThat(StandardCurveAccumulations.byId("multiple-trait-procedure", STANDARDS))
                .isPresent();
        assertThat(StandardCurveAccumulations.byId("test-interval", STANDARDS)).isEmpty();
        TraitStandards milk = TraitStandards.single(LactationTrait.MILK, STANDARDS.first());
        AccumulatedYield yield = new BestPredictionToDate(milk).accumulate(onTheMean(20, 50), LATE);
        assertThat(yield.milk().value()).isPresent();
        assertThat(yield.fat().value()).isEmpty();
    }

    private static double curve(int day) {
        return 40 - 12 * Math.exp(-0.05 * day) - 0.05 * day;
    }

    private static Lactation onTheMean(int... days) {
        List<TestDay> tests = new ArrayList<>();
        for (int day : days) {
            double milkKg = STANDARDS.first().meanKg(day);
            tests.add(TestDay.ofMilk(WorkedCow.CALVING.plusDays(day), milkKg)
                    .withFatPct(100 * STANDARDS.standard(1).meanKg(day) / milkKg)
                    .withProteinPct(100 * STANDARDS.standard(2).meanKg(day) / milkKg));
        }
        return Lactation.inMilk(2, WorkedCow.CALVING, tests);
    }
}
