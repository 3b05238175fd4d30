package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * What a fitted curve may claim. The limits are ours (see {@link CurveRules}); the curves the tests are drawn from are invented.
 */
class CurveFitLawTest {
    private static final LocalDate CALVING = LocalDate.of(2023, 10, 1);
    private static final LocalDate LATE = LocalDate.of(2025, 1, 1);
    private static final WoodCurve COW = new WoodCurve(16, 0.2, 0.004);

    /** Tests on those days with the milk of a curve, every other one 0.3 kg above it and the rest below. */
    private static Lactation lactation(LactationCurve curve, int... days) {
        List<TestDay> tests = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            double kg = curve.milkKgPerDay(days[i]) + (i % 2 == 0 ? 0.3 : -0.3);
            tests.add(TestDay.ofMilk(CALVING.plusDays(days[i]), kg));
        }
        return Lactation.inMilk(2, CALVING, tests);
    }

    /** Tests on those days with exactly the milk of a curve. */
    private static Lactation exactly(LactationCurve curve, int... days) {
        List<TestDay> tests = new ArrayList<>();
        for (int day : days) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), curve.milkKgPerDay(day)));
        }
        return Lactation.inMilk(2, CALVING, tests);
    }

    private static List<FindingCode> codes(CurveFit fit) {
        return fit.findings().stream().map(Finding::code).toList();
    }

    @Test
    void aUsualLactationGetsItsPeakWithStandardErrorsAndNoFinding() {
        CurveFit fit = LactationCurves.WOOD.fit(lactation(COW, 15, 45, 75, 105, 135, 165, 195, 225, 255, 285), LATE);

        assertThat(fit.findings()).isEmpty();
        assertThat(fit.peakDaysInMilk().orElseThrow()).isBetween(40.0, 60.0);
        assertThat(fit.peakMilkKgPerDay().orElseThrow()).isCloseTo(28.6, Offset.offset(0.5));
        assertThat(fit.peakDaysStandardError().orElseThrow()).isBetween(0.1, 10.0);
        assertThat(fit.peakMilkStandardErrorKgPerDay().orElseThrow()).isBetween(0.05, 0.5);
        assertThat(fit.parameters())
                .allMatch(parameter -> parameter.standardError().isPresent());
        assertThat(fit.testCount()).isEqualTo(10);
        assertThat(fit.firstTestDaysInMilk()).hasValue(15);
        assertThat(fit.lastTestDaysInMilk()).hasValue(285);
        assertThat(fit.spansEnoughForShape()).isTrue();
        assertThat(fit.withoutFarTests()).isEmpty();
        assertThat(fit.inputs()).hasSize(10).allMatch(UsedInput::isUsed);
        assertThat(fit.model()).isSameAs(LactationCurves.WOOD);
        assertThat(fit.asOf()).isEqualTo(LATE);
        assertThat(fit.estimate().orElseThrow().testCount()).isEqualTo(10);
        assertThat(fit.rssKg2()).isPresent();
        assertThat(fit.aicc()).isPresent();
        assertThat(fit.bic()).isPresent();
    }

    @Test
    void withoutAnyTestThereIsNoCurve() {
        CurveFit fit = LactationCurves.WOOD.fit(Lactation.inMilk(1, CALVING, List.of()), LATE);

        assertThat(fit.isRefused()).isTrue();
        assertThat(fit.curve()).isEmpty();
        assertThat(fit.estimate()).isEmpty();
        assertThat(fit.parameters()).isEmpty();
        assertThat(fit.residualSdKg()).isEmpty();
        assertThat(fit.rssKg2()).isEmpty();
        assertThat(fit.aicc()).isEmpty();
        assertThat(fit.bic()).isEmpty();
        assertThat(fit.totalKg(1, 10)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> fit.totalKg(10, 1));
        assertThat(fit.firstTestDaysInMilk()).isEmpty();
        assertThat(fit.lastTestDaysInMilk()).isEmpty();
        assertThat(fit.spansEnoughForShape()).isFalse();
        assertThat(codes(fit)).containsExactly(FindingCode.NO_TEST_DAYS);
    }

    @Test
    void threeTestsAreTooFewForThreeParametersAndFourAreEnough() {
        CurveFit three = LactationCurves.WOOD.fit(lactation(COW, 15, 45, 75), LATE);
        CurveFit four = LactationCurves.WOOD.fit(lactation(COW, 15, 45, 75, 105), LATE);

        assertThat(three.isRefused()).isTrue();
        assertThat(three.findings())
                .containsExactly(Finding.of(FindingCode.TOO_FEW_TESTS)
                        .withSeen("3 tests")
                        .withExpected("4 tests or more"));
        assertThat(four.isRefused()).isFalse();
    }

    @Test
    void testsOnColostrumDaysAndAfterTheAsOfDateDoNotCountTowardsTheLeast() {
        Lactation cow = lactation(COW, 3, 15, 45, 75, 105);

        assertThat(LactationCurves.WOOD.fit(cow, CALVING.plusDays(105)).testCount())
                .isEqualTo(4);
        CurveFit before = LactationCurves.WOOD.fit(cow, CALVING.plusDays(104));
        assertThat(before.isRefused()).isTrue();
        assertThat(codes(before)).containsExactly(FindingCode.TEST_ON_COLOSTRUM_DAYS, FindingCode.TOO_FEW_TESTS);
        assertThat(before.inputs()).hasSize(4);
    }

    @Test
    void testsWithinTwoMonthsShowNoPeak() {
        CurveFit fit = LactationCurves.WOOD.fit(lactation(COW, 10, 25, 40, 55, 69), LATE);

        assertThat(fit.curve()).isPresent();
        assertThat(fit.spansEnoughForShape()).isFalse();
        assertThat(fit.peakDaysInMilk()).isEmpty();
        assertThat(fit.peakMilkKgPerDay()).isEmpty();
        assertThat(fit.peakDaysStandardError()).isEmpty();
        assertThat(fit.peakMilkStandardErrorKgPerDay()).isEmpty();
        assertThat(codes(fit)).containsExactly(FindingCode.TESTS_TOO_CLOSE);
        assertThat(LactationCurves.WOOD
                        .fit(lactation(COW, 10, 25, 40, 55, 70), LATE)
                        .spansEnoughForShape())
                .isTrue();
    }

    @Test
    void aFirstTestAfterDay60ShowsNoPeak() {
        CurveFit day61 = LactationCurves.WOOD.fit(lactation(COW, 61, 91, 121, 151, 181, 211), LATE);
        CurveFit day60 = LactationCurves.WOOD.fit(lactation(COW, 60, 91, 121, 151, 181, 211), LATE);

        assertThat(day61.peakDaysInMilk()).isEmpty();
        assertThat(codes(day61)).containsExactly(FindingCode.PEAK_BEFORE_FIRST_TEST);
        assertThat(codes(day60)).doesNotContain(FindingCode.PEAK_BEFORE_FIRST_TEST);
    }

    @Test
    void aLactationThatFallsFromTheFirstTestGetsItsCurveAndIsCalledAtypical() {
        CurveFit fit = LactationCurves.WOOD.fit(
                lactation(new WoodCurve(40, -0.1, 0.002), 15, 45, 75, 105, 135, 165, 195, 225), LATE);

        assertThat(fit.curve()).isPresent();
        assertThat(fit.peakDaysInMilk()).isEmpty();
        assertThat(fit.findings())
                .containsExactly(Finding.of(FindingCode.ATYPICAL_CURVE).withSeen("falling"));
    }

    @Test
    void aPeakAfterDay150IsNotBelieved() {
        CurveFit fit = LactationCurves.WOOD.fit(
                lactation(new WoodCurve(8, 0.35, 0.002), 15, 45, 75, 105, 135, 165, 195, 225, 255, 285), LATE);

        assertThat(fit.curve().orElseThrow().peakDaysInMilk().orElseThrow()).isGreaterThan(150);
        assertThat(fit.peakDaysInMilk()).isEmpty();
        assertThat(codes(fit)).containsExactly(FindingCode.PEAK_OUT_OF_REACH);
    }

    @Test
    void aPeakMoreThanAMonthOutsideTheTestsIsNotBelieved() {
        // peaks on day 20, tests from day 55; peaks on day 125, tests to day 80
        CurveFit early =
                LactationCurves.WOOD.fit(exactly(new WoodCurve(24, 0.08, 0.004), 55, 85, 115, 145, 175, 205), LATE);
        CurveFit late = LactationCurves.WOOD.fit(exactly(new WoodCurve(9, 0.3, 0.0024), 10, 30, 50, 70, 80), LATE);

        assertThat(early.findings())
                .containsExactly(Finding.of(FindingCode.PEAK_OUT_OF_REACH)
                        .withSeen("day 20.0")
                        .withExpected("day 25 to 150"));
        assertThat(late.findings())
                .containsExactly(Finding.of(FindingCode.PEAK_OUT_OF_REACH)
                        .withSeen("day 125.0")
                        .withExpected("day 5 to 110"));
    }

    @Test
    void aCurveWithoutAnInnerPeakIsGivenWithoutOne() {
        // rises by the signs of its parameters, but by less than it declines from the first day on
        CurveFit fit =
                LactationCurves.WILMINK.fit(exactly(new WilminkCurve(35, -1, -0.06), 10, 40, 70, 100, 130, 160), LATE);

        assertThat(fit.curve()).isPresent();
        assertThat(fit.findings()).containsExactly(Finding.of(FindingCode.NO_INNER_PEAK));
    }

    @Test
    void aPeakWithoutAnyStandardErrorIsCalledUncertain() {
        CurveFit fit = new NaturalSplineModel(0).fit(lactation(COW, 15, 45, 75, 105, 135, 165), LATE);

        assertThat(fit.peakDaysInMilk()).isPresent();
        assertThat(fit.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.PEAK_UNCERTAIN);
            assertThat(finding.seen()).hasValue("no standard error");
        });
    }

    // ours: five degrees of freedom must be left without the test, which for three parameters is nine tests
    @Test
    void amongEightTestsNoneIsCalledFarOffAndAmongNineItIs() {
        for (int tests : new int[] {8, 9}) {
            int[] days = {15, 45, 75, 105, 135, 165, 195, 225, 255};
            List<TestDay> cow = new ArrayList<>(lactation(COW, days).testDays().subList(0, tests));
            cow.set(4, TestDay.ofMilk(cow.get(4).date(), 12));

            CurveFit fit = LactationCurves.WOOD.fit(Lactation.inMilk(2, CALVING, cow), LATE);

            assertThat(codes(fit).contains(FindingCode.TEST_FAR_OFF_CURVE)).isEqualTo(tests == 9);
            if (tests == 9) {
                Finding far = fit.findings().get(fit.findings().size() - 1);
                double byCurve = fit.curve().orElseThrow().milkKgPerDay(135);
                assertThat(far.seen()).hasValue("12.0 kg");
                assertThat(far.expected()).hasValue(String.format(Locale.ROOT, "about %.1f kg by the curve", byCurve));
            }
        }
    }

    @Test
    void aPeakThatIsPoorlyKnownIsGivenAndCalledUncertain() {
        List<TestDay> tests = new ArrayList<>();
        double[] noiseKg = {-7, 7, -6, 8, -8};
        int[] days = {20, 50, 80, 110, 140};
        for (int i = 0; i < days.length; i++) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(days[i]), COW.milkKgPerDay(days[i]) + noiseKg[i]));
        }

        CurveFit fit = LactationCurves.WOOD.fit(Lactation.inMilk(2, CALVING, tests), LATE);

        assertThat(fit.peakMilkKgPerDay()).isPresent();
        assertThat(fit.peakMilkStandardErrorKgPerDay().orElseThrow())
                .isGreaterThan(0.1 * fit.peakMilkKgPerDay().orElseThrow());
        assertThat(codes(fit)).containsExactly(FindingCode.PEAK_UNCERTAIN);
    }

    @Test
    void aTestFarOffTheCurveIsNamedAndTheFitWithoutItStandsBesideTheOther() {
        Lactation good = lactation(COW, 15, 45, 75, 105, 135, 165, 195, 225, 255, 285);
        List<TestDay> tests = new ArrayList<>(good.testDays());
        LocalDate badDay = tests.get(4).date();
        tests.set(4, TestDay.ofMilk(badDay, 12));

        CurveFit fit = LactationCurves.WOOD.fit(Lactation.inMilk(2, CALVING, tests), LATE);

        assertThat(codes(fit)).contains(FindingCode.TEST_FAR_OFF_CURVE);
        CurveFit without = fit.withoutFarTests().orElseThrow();
        assertThat(without.testCount()).isEqualTo(9);
        assertThat(without.residualSdKg().orElseThrow()).isLessThan(0.5);
        assertThat(fit.residualSdKg().orElseThrow()).isGreaterThan(3);
        assertThat(without.inputs()).contains(UsedInput.leftOut("test-day", badDay, "test-far-off-curve"));
        assertThat(without.inputs()).hasSize(10);
    }

    @Test
    void testsThatHardlyTellTheParametersApartAreRefused() {
        // twelve days in a row, and nine coefficients of polynomials over 300 days
        int[] days = {290, 291, 292, 293, 294, 295, 296, 297, 298, 299, 300, 301};
        CurveModel model = new LegendreModel(8, 5, 305);

        CurveFit fit = model.fit(lactation(COW, days), LATE);

        assertThat(fit.isRefused()).isTrue();
        assertThat(fit.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.NOT_ESTIMABLE);
            assertThat(finding.seen().orElseThrow()).startsWith("condition number");
            assertThat(finding.expected()).hasValue("1e+10 at most");
        });
    }

    @Test
    void noSumIsMadeFromACurveFarBeyondTheLastTest() {
        CurveFit fit = LactationCurves.WOOD.fit(lactation(COW, 15, 45, 75, 105, 135, 165), LATE);

        assertThat(fit.totalKg(1, 195).orElseThrow())
                .isEqualTo(fit.curve().orElseThrow().totalKg(1, 195));
        assertThat(fit.totalKg(1, 196)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> fit.totalKg(0, 10));
    }

    @Test
    void shiftingEveryDateChangesNothing() {
        long seed = 7;
        Random random = new Random(seed);
        for (int cow = 0; cow < 50; cow++) {
            int shiftDays = random.nextInt(4000);
            List<TestDay> tests = new ArrayList<>();
            List<TestDay> shifted = new ArrayList<>();
            for (int day = 10; day < 300; day += 25 + random.nextInt(10)) {
                double kg = COW.milkKgPerDay(day) + random.nextGaussian();
                tests.add(TestDay.ofMilk(CALVING.plusDays(day), kg));
                shifted.add(TestDay.ofMilk(CALVING.plusDays(day + shiftDays), kg));
            }
            for (CurveModel model : LactationCurves.all()) {
                CurveFit fit = model.fit(Lactation.inMilk(1, CALVING, tests), LATE);
                CurveFit later =
                        model.fit(Lactation.inMilk(1, CALVING.plusDays(shiftDays), shifted), LATE.plusDays(shiftDays));
                assertThat(later.curve())
                        .as("seed %d cow %d %s", seed, cow, model.id())
                        .isEqualTo(fit.curve());
                assertThat(later.peakDaysInMilk()).isEqualTo(fit.peakDaysInMilk());
            }
        }
    }

    @Test
    void theOrderInWhichTestsWereEnteredDoesNotMatter() {
        Lactation cow = lactation(COW, 15, 45, 75, 105, 135, 165, 195, 225, 255, 285);
        List<TestDay> shuffled = new ArrayList<>(cow.testDays());
        Collections.shuffle(shuffled, new Random(3));

        for (CurveModel model : LactationCurves.all()) {
            assertThat(model.fit(Lactation.inMilk(2, CALVING, shuffled), LATE).curve())
                    .as(model.id())
                    .isEqualTo(model.fit(cow, LATE).curve());
        }
    }
}
