package org.pailbook.lactation.persistency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.curve.LegendreModel;
import org.pailbook.lactation.curve.WilminkCurve;
import org.pailbook.lactation.curve.WoodCurve;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class PersistencyLawTest {
    private static final long SEED = 60280;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);

    private static WoodCurve randomWood(Random random) {
        return new WoodCurve(
                10 + 20 * random.nextDouble(), 0.1 + 0.2 * random.nextDouble(), 0.002 + 0.004 * random.nextDouble());
    }

    private static Lactation measured(LactationCurve curve, int... days) {
        List<TestDay> tests = new ArrayList<>();
        for (int day : days) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), curve.milkKgPerDay(day)));
        }
        return Lactation.inMilk(2, CALVING, tests);
    }

    private static CurveFit fit(Lactation lactation) {
        return LactationCurves.WOOD.fit(lactation, CALVING.plusDays(400));
    }

    private static List<FindingCode> codes(Figure figure) {
        return figure.findings().stream().map(Finding::code).toList();
    }

    @Test
    void twiceTheMilkIsTheSameRatioAndTheSameShape() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            WoodCurve once = randomWood(random);
            WoodCurve twice = new WoodCurve(2 * once.a(), once.b(), once.c());
            for (PersistencyMeasure measure : PersistencyMeasures.all()) {
                double factor = measure.unit().equals("kg/d") ? 2 : 1;
                assertThat(measure.of(twice))
                        .as("seed " + SEED + ", " + measure.id())
                        .isCloseTo(factor * measure.of(once), within(1e-9));
            }
        }
    }

    @Test
    void aFasterDeclineIsLessPersistentByEveryMeasure() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            WilminkCurve slow = new WilminkCurve(30, -10, -0.02 - 0.02 * random.nextDouble(), 0.05);
            WilminkCurve fast = new WilminkCurve(30, -10, slow.c() - 0.02, 0.05);
            WoodCurve slowWood = randomWood(random);
            WoodCurve fastWood = new WoodCurve(slowWood.a(), slowWood.b(), slowWood.c() + 0.001);
            for (PersistencyMeasure measure : PersistencyMeasures.all()) {
                if (measure.isDefinedFor(slow)) {
                    assertThat(measure.of(fast))
                            .as("seed " + SEED + ", " + measure.id())
                            .isLessThan(measure.of(slow));
                }
                assertThat(measure.of(fastWood))
                        .as("seed " + SEED + ", " + measure.id())
                        .isLessThan(measure.of(slowWood));
            }
        }
    }

    @Test
    void testsThatLieOnACurveGiveTheMeasuresOfThatCurve() {
        Random random = new Random(SEED);
        for (int i = 0; i < 20; i++) {
            WoodCurve truth = randomWood(random);
            CurveFit fit = fit(measured(truth, 10, 40, 70, 100, 130, 160, 190, 220, 250, 280));
            for (PersistencyMeasure measure : PersistencyMeasures.all()) {
                Figure figure = measure.ofFit(fit);
                assertThat(figure.orThrow())
                        .as("seed " + SEED + ", " + measure.id())
                        .isCloseTo(measure.of(truth), within(1e-3));
                assertThat(figure.explanation().total()).isEqualTo(figure.orThrow());
                assertThat(figure.inputs()).hasSize(10);
            }
        }
    }

    @Test
    void aMeasureIsRefusedWhereTheTestsDoNotReach() {
        WoodCurve truth = new WoodCurve(15, 0.2, 0.004);
        CurveFit to160 = fit(measured(truth, 10, 40, 70, 100, 130, 160));
        CurveFit to170 = fit(measured(truth, 10, 40, 70, 100, 130, 170));
        assertThat(codes(PeriodRatio.P2_1.ofFit(to160))).contains(FindingCode.LACTATION_TOO_SHORT);
        assertThat(PeriodRatio.P2_1.ofFit(to170).value()).isPresent();
        assertThat(codes(PeriodRatio.P3_1.ofFit(to170))).contains(FindingCode.LACTATION_TOO_SHORT);
        assertThat(codes(Decline.KG_60_TO_280.ofFit(to170))).contains(FindingCode.LACTATION_TOO_SHORT);
        assertThat(WoodPersistency.S.ofFit(to160).value()).isPresent();
    }

    @Test
    void testsTooCloseTogetherGiveNoPersistency() {
        CurveFit close = fit(measured(new WoodCurve(15, 0.2, 0.004), 10, 20, 30, 40, 50));
        assertThat(codes(WoodPersistency.S.ofFit(close))).contains(FindingCode.PERSISTENCY_REFUSED);
        assertThat(WoodPersistency.S.ofFit(close).value()).isEmpty();
    }

    @Test
    void aRefusedFitGivesNoPersistencyAndSaysWhy() {
        CurveFit few = fit(measured(new WoodCurve(15, 0.2, 0.004), 10, 60, 110));
        Figure figure = PeriodRatio.P2_1.ofFit(few);
        assertThat(figure.value()).isEmpty();
        assertThat(codes(figure)).contains(FindingCode.TOO_FEW_TESTS);
    }

    @Test
    void threeTestsGiveNoPersistencyEvenToACurveThatNeedsNoMore() {
        // a straight line has two parameters and is fitted to three tests
        LegendreModel line = new LegendreModel(1, 1, 305);
        WoodCurve truth = new WoodCurve(15, 0.2, 0.004);
        CurveFit three = line.fit(measured(truth, 10, 110, 210), CALVING.plusDays(400));
        assertThat(three.isRefused()).isFalse();
        assertThat(codes(PeriodRatio.P2_1.ofFit(three))).contains(FindingCode.TOO_FEW_TESTS);
        CurveFit four = line.fit(measured(truth, 10, 110, 160, 210), CALVING.plusDays(400));
        assertThat(PeriodRatio.P2_1.ofFit(four).value()).isPresent();
    }

    @Test
    void unitsAndIdsAreThoseOfTheDefinitions() {
        assertThat(PersistencyMeasures.all())
                .extracting(measure -> measure.id() + " " + measure.unit())
                .containsExactly(
                        "persistency-p2-1 %",
                        "persistency-p3-1 %",
                        "persistency-wood-1967 1",
                        "persistency-decline-60-280 kg/d",
                        "persistency-decline-ratio-60-280 %");
        assertThat(MonthlyPersistency.all())
                .extracting(MonthlyPersistency::id)
                .containsExactly("monthly-persistency-power", "monthly-persistency-linear");
        assertThat(PeakTest.all()).extracting(PeakTest::id).containsExactly("peak-test-150", "peak-test-90");
    }

    @Test
    void twoTestsAreEnoughForAMonth() {
        Lactation two = Lactation.inMilk(
                1,
                CALVING,
                List.of(TestDay.ofMilk(CALVING.plusDays(40), 30), TestDay.ofMilk(CALVING.plusDays(70), 27)));
        assertThat(MonthlyPersistency.POWER
                        .ofLactation(two, CALVING.plusDays(70))
                        .orThrow())
                .isCloseTo(90, within(1e-9));
    }

    @Test
    void everyMethodOfThisPackageSaysWhereItComesFrom() {
        List<PublishedMethod> methods = new ArrayList<>(PersistencyMeasures.all());
        methods.addAll(MonthlyPersistency.all());
        methods.addAll(PeakTest.all());
        methods.addAll(List.of(
                SummitMilk.SUMMIT,
                FirstTestYield.BY_DAY_40,
                AnnualizedYield.BY_CALVING_INTERVAL,
                DaysOpen.TO_CONCEPTION,
                RollingHerdAverage.YEAR,
                LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION),
                ParityFactorLearning.MIXED_MODEL,
                MatureEquivalent.by(ParityFactors.parse(List.of("1,1.2"), "a table"))));
        assertThat(methods).extracting(PublishedMethod::id).doesNotHaveDuplicates();
        assertThat(methods).allSatisfy(method -> {
            assertThat(method.id()).matches("[a-z0-9]+(-[a-z0-9]+)+");
            assertThat(method.version()).isEqualTo(1);
            assertThat(method.citation().place()).isNotBlank();
        });
        assertThat(MonthlyPersistency.POWER.citation().place()).isEqualTo("100 (y2 / y1)^(30 / interval)");
    }

    @Test
    void woodsMeasureIsForWoodsCurveThatFalls() {
        WilminkCurve wilmink = new WilminkCurve(30, -10, -0.04, 0.05);
        assertThat(WoodPersistency.S.isDefinedFor(wilmink)).isFalse();
        assertThat(WoodPersistency.S.isDefinedFor(new WoodCurve(15, 0.2, 0))).isFalse();
        assertThatThrownBy(() -> WoodPersistency.S.of(wilmink)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> WoodPersistency.s(0.2, 0)).isInstanceOf(IllegalArgumentException.class);
        CurveFit wilminkFit = LactationCurves.WILMINK.fit(
                measured(wilmink, 10, 40, 70, 100, 130, 160, 190, 220), CALVING.plusDays(400));
        assertThat(codes(WoodPersistency.S.ofFit(wilminkFit))).contains(FindingCode.PERSISTENCY_REFUSED);
        assertThat(PeriodRatio.P2_1.ofFit(wilminkFit).value()).isPresent();
    }

    @Test
    void aCurveWithoutMilkHasNoRatio() {
        WilminkCurve none = new WilminkCurve(-1, 0, 0, 0.05);
        assertThat(PeriodRatio.P2_1.isDefinedFor(none)).isFalse();
        assertThat(Decline.PCT_60_TO_280.isDefinedFor(none)).isFalse();
        assertThat(Decline.KG_60_TO_280.isDefinedFor(none)).isTrue();
        assertThatThrownBy(() -> PeriodRatio.P2_1.of(none)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Decline.PCT_60_TO_280.of(none)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void bothMonthlyFormsAgreeAt30DaysAndForAFlatCow() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            double earlier = 10 + 30 * random.nextDouble();
            double later = 10 + 30 * random.nextDouble();
            int days = 20 + random.nextInt(30);
            assertThat(MonthlyPersistency.POWER.pct(earlier, later, 30))
                    .as("seed " + SEED)
                    .isCloseTo(MonthlyPersistency.LINEAR.pct(earlier, later, 30), within(1e-9));
            assertThat(MonthlyPersistency.POWER.pct(earlier, earlier, days)).isCloseTo(100, within(1e-9));
            assertThat(MonthlyPersistency.LINEAR.pct(earlier, earlier, days)).isCloseTo(100, within(1e-9));
        }
    }

    @Test
    void theMonthlyPowerFormCompounds() {
        // two months at 95 % leave 90.25 %
        assertThat(MonthlyPersistency.POWER.pct(40, 40 * 0.9025, 60)).isCloseTo(95, within(1e-9));
    }

    @Test
    void numbersThatGiveNoPersistencyAreRefused() {
        for (MonthlyPersistency monthly : MonthlyPersistency.all()) {
            assertThatThrownBy(() -> monthly.pct(0, 10, 30)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> monthly.pct(10, -1, 30)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> monthly.pct(10, 10, 0)).isInstanceOf(IllegalArgumentException.class);
            assertThat(monthly.pct(10, 0, 30)).isZero();
        }
        assertThatThrownBy(() -> AnnualizedYield.kgPerYear(9000, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void everyMeasureIsFoundByItsIdAndSaysWhereItComesFrom() {
        assertThat(PersistencyMeasures.all()).extracting(PersistencyMeasure::id).doesNotHaveDuplicates();
        for (PersistencyMeasure measure : PersistencyMeasures.all()) {
            assertThat(PersistencyMeasures.byId(measure.id())).containsSame(measure);
            assertThat(measure.citation().text()).isNotBlank();
            assertThat(measure.version()).isEqualTo(1);
        }
        assertThat(PersistencyMeasures.byId("none")).isEmpty();
        assertThat(MonthlyPersistency.all()).extracting(MonthlyPersistency::id).doesNotHaveDuplicates();
        assertThat(PeakTest.all()).extracting(PeakTest::id).doesNotHaveDuplicates();
    }
}
