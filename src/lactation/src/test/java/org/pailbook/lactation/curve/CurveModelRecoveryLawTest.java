package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.pailbook.lactation.finding.FindingCode;

/** Points drawn from a curve give that curve back; points no curve of a kind can follow are refused. */
class CurveModelRecoveryLawTest {
    private static final long SEED = 305;

    private record Case(CurveModel model, Function<double[], LactationCurve> of, double[] low, double[] high) {}

    private static final List<Case> CASES = List.of(
            new Case(
                    LactationCurves.WILMINK,
                    p -> new WilminkCurve(p[0], p[1], p[2]),
                    new double[] {15, -20, -0.09},
                    new double[] {45, -2, -0.01}),
            new Case(
                    LactationCurves.WOOD_LOG_LINEAR,
                    p -> new WoodCurve(p[0], p[1], p[2]),
                    new double[] {5, -0.1, -0.001},
                    new double[] {30, 0.5, 0.01}),
            new Case(
                    LactationCurves.WILMINK_FREE_RATE,
                    p -> new WilminkCurve(p[0], p[1], p[2], p[3]),
                    new double[] {15, -20, -0.09, 0.02},
                    new double[] {45, -8, -0.01, 0.1}),
            new Case(
                    LactationCurves.ALI_SCHAEFFER,
                    p -> new AliSchaefferCurve(p[0], p[1], p[2], p[3], p[4]),
                    new double[] {15, -12, -3, 2, -2},
                    new double[] {25, -4, 3, 8, -0.5}),
            new Case(
                    LactationCurves.LEGENDRE_5,
                    p -> new LegendreCurve(5, 305, p),
                    new double[] {25, -6, -3, 0, -2, -1},
                    new double[] {40, 2, 1, 3, 1, 1}),
            new Case(
                    LactationCurves.DIJKSTRA,
                    p -> new DijkstraCurve(p[0], p[1], p[2], p[3]),
                    new double[] {12, 0.015, 0.03, 0.0015},
                    new double[] {22, 0.04, 0.08, 0.004}),
            new Case(
                    LactationCurves.NELDER,
                    p -> new NelderCurve(p[0], p[1], p[2]),
                    new double[] {0.1, 0.015, 0.00003},
                    new double[] {0.5, 0.03, 0.0002}),
            new Case(
                    LactationCurves.COBBY_LE_DU,
                    p -> new CobbyLeDuCurve(p[0], p[1], p[2]),
                    new double[] {20, 0.02, 0.03},
                    new double[] {45, 0.09, 0.15}),
            new Case(
                    LactationCurves.GUO_SWALVE,
                    p -> new GuoSwalveCurve(p[0], p[1], p[2]),
                    new double[] {5, -3, 4},
                    new double[] {25, -1, 12}));

    @TestFactory
    Stream<DynamicTest> aFitOfItsOwnPointsReturnsTheCurve() {
        return CASES.stream()
                .map(one -> DynamicTest.dynamicTest(one.model().id(), () -> {
                    Random random = new Random(SEED);
                    for (int draw = 0; draw < 60; draw++) {
                        double[] parameters = new double[one.low().length];
                        for (int k = 0; k < parameters.length; k++) {
                            parameters[k] = one.low()[k] + random.nextDouble() * (one.high()[k] - one.low()[k]);
                        }
                        LactationCurve curve = one.of().apply(parameters);
                        double[] days = new double[12];
                        Arrays.setAll(days, i -> 6 + 25 * i + random.nextInt(10));
                        double[] kg =
                                Arrays.stream(days).map(curve::milkKgPerDay).toArray();

                        CurveEstimate fit = one.model().estimate(days, kg);

                        String where = "seed " + SEED + " draw " + draw;
                        assertThat(fit.curve()).as(where).isPresent();
                        for (int k = 0; k < parameters.length; k++) {
                            assertThat(fit.parameters().get(k).value())
                                    .as("%s parameter %d", where, k)
                                    .isCloseTo(parameters[k], Offset.offset(1e-5 * Math.abs(parameters[k]) + 1e-9));
                        }
                        assertThat(fit.rssKg2().orElseThrow()).as(where).isLessThan(1e-12);
                    }
                }));
    }

    @Test
    void anUnsmoothedSplineRunsThroughEveryTestAndLeavesNoSpread() {
        double[] days = {10, 40, 75, 100, 130, 160};
        double[] kg = {22, 28, 27, 25, 24, 21};

        CurveEstimate fit = new NaturalSplineModel(0).estimate(days, kg);

        assertThat(fit.rssKg2().orElseThrow()).isLessThan(1e-20);
        assertThat(fit.residualSdKg()).isEmpty();
        assertThat(fit.aic()).isEmpty();
        assertThat(fit.studentizedResidual(2)).isEmpty();
        assertThat(fit.standardErrorKgPerDay(50)).isEmpty();
        assertThat(fit.parameters())
                .allMatch(parameter -> parameter.standardError().isEmpty());
        assertThat(new NaturalSplineModel(5).smoothingDays3()).isEqualTo(5);
    }

    @Test
    void anEndlesslySmoothedSplineIsTheStraightLine() {
        double[] days = {10, 40, 75, 100, 130, 160};
        double[] kg = {22, 28, 27, 25, 24, 21};

        CurveEstimate fit = new NaturalSplineModel(1e13).estimate(days, kg);

        // regression line by hand: mean day 85.833333, mean 24.5, slope -313.0 / 15520.833...
        double meanDay = Arrays.stream(days).average().orElseThrow();
        double cross = 0;
        double square = 0;
        for (int i = 0; i < days.length; i++) {
            cross += (days[i] - meanDay) * (kg[i] - 24.5);
            square += (days[i] - meanDay) * (days[i] - meanDay);
        }
        LactationCurve curve = fit.curve().orElseThrow();
        assertThat(curve.milkKgPerDay(120)).isCloseTo(24.5 + cross / square * (120 - meanDay), Offset.offset(1e-5));
        assertThat(fit.degreesOfFreedom()).isCloseTo(4, Offset.offset(1e-5));
    }

    @Test
    void moreSmoothingNeverFitsTheTestsBetter() {
        double[] days = {10, 40, 75, 100, 130, 160, 190, 220};
        double[] kg = {22, 28, 27, 25, 26, 21, 20, 18};
        double before = -1;
        for (double smoothing = 1; smoothing < 1e9; smoothing *= 10) {
            CurveEstimate fit = new NaturalSplineModel(smoothing).estimate(days, kg);
            assertThat(fit.rssKg2().orElseThrow()).isGreaterThan(before);
            before = fit.rssKg2().orElseThrow();
        }
    }

    @Test
    void twoDifferentDaysMakeNoSpline() {
        CurveEstimate fit =
                LactationCurves.SMOOTHING_SPLINE.estimate(new double[] {10, 10, 40, 40}, new double[] {20, 21, 25, 26});

        assertThat(fit.refusal().orElseThrow().code()).isEqualTo(FindingCode.NOT_ESTIMABLE);
    }

    @Test
    void milkOfZeroHasNoLogarithmAndOnlyZerosNoWoodCurve() {
        double[] days = {10, 40, 70, 100, 130};

        assertThat(LactationCurves.WOOD_LOG_LINEAR
                        .estimate(days, new double[] {20, 25, 0, 22, 20})
                        .refusal()
                        .orElseThrow()
                        .code())
                .isEqualTo(FindingCode.NOT_ESTIMABLE);
        assertThat(LactationCurves.WOOD
                        .estimate(days, new double[] {20, 25, 0, 22, 20})
                        .curve())
                .isPresent();
        assertThat(LactationCurves.WOOD
                        .estimate(days, new double[5])
                        .refusal()
                        .orElseThrow()
                        .code())
                .isEqualTo(FindingCode.NOT_ESTIMABLE);
        assertThat(LactationCurves.NELDER
                        .estimate(days, new double[5])
                        .refusal()
                        .orElseThrow()
                        .code())
                .isEqualTo(FindingCode.NOT_ESTIMABLE);
    }

    // two weights above zero give no logarithmic start; the usual curve with its peak at the highest test is the second
    @Test
    void woodFindsItsMinimumAlsoWhereTheLogarithmsGiveNoStart() {
        double[] days = {10, 47, 77, 93};
        double[] kg = {0, 40.2, 0, 23.4};

        CurveEstimate fit = LactationCurves.WOOD.estimate(days, kg);

        assertNoSlopeLeft(fit, days);
    }

    // the reciprocal regression starts below zero at a small weight; level milk is the second start
    @Test
    void nelderFindsItsMinimumAlsoWhereTheRegressionStartsBelowZero() {
        double[] days = {18, 34, 76, 109, 119, 156};
        double[] kg = {41.8, 0.5, 0.5, 32.9, 7.3, 11.4};

        CurveEstimate fit = LactationCurves.NELDER.estimate(days, kg);

        assertNoSlopeLeft(fit, days);
    }

    @Test
    void nelderWithAPoleBetweenTheTestsIsRefused() {
        double[] days = {6, 65, 101, 130, 171};
        double[] kg = {25, 30, 14, 10, 4};

        assertThat(LactationCurves.NELDER
                        .estimate(days, kg)
                        .refusal()
                        .orElseThrow()
                        .seen())
                .hasValue("a pole between the tests");
    }

    private static void assertNoSlopeLeft(CurveEstimate fit, double[] days) {
        double[] residuals = fit.residualsKg();
        for (int k = 0; k < 3; k++) {
            double dot = 0;
            double length = 0;
            for (int i = 0; i < days.length; i++) {
                double derivative = fit.curve().orElseThrow().gradient(days[i])[k];
                dot += derivative * residuals[i];
                length += derivative * derivative;
            }
            assertThat(dot / Math.sqrt(length)).isCloseTo(0, Offset.offset(1e-7));
        }
    }

    @Test
    void milkThatFallsFromTheFirstTestOnHasNoRiseToMeasure() {
        double[] days = {20, 50, 80, 110, 140, 170, 200, 230};
        double[] kg = Arrays.stream(days).map(day -> 35 - 0.06 * day).toArray();

        assertThat(LactationCurves.COBBY_LE_DU
                        .estimate(days, kg)
                        .refusal()
                        .orElseThrow()
                        .seen())
                .hasValue("no inner minimum over c");
    }

    @Test
    void asManyTestsAsParametersAreMetWithoutAnySpread() {
        CurveEstimate fit = LactationCurves.WOOD.estimate(new double[] {20, 80, 200}, new double[] {24, 28, 20});

        assertThat(fit.rssKg2().orElseThrow()).isLessThan(1e-20);
        assertThat(fit.residualSdKg()).isEmpty();
        assertThat(fit.aicc()).isEmpty();
        assertThat(fit.bic()).isEmpty();
        assertThat(fit.peakDaysStandardError()).isEmpty();
        assertThat(fit.peakMilkStandardErrorKgPerDay()).isEmpty();
        assertThat(fit.curve().orElseThrow().peakDaysInMilk()).isPresent();
        assertThat(fit.residualsKg()).hasSize(3);
        assertThat(fit.parameters())
                .isEqualTo(fit.curve().orElseThrow().parameters())
                .hasSize(3);
        assertThat(fit.model()).isSameAs(LactationCurves.WOOD);
    }
}
