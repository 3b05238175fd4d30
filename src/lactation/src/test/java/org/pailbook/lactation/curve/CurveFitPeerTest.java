package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * A few fits of other programs, kept here as facts so that they are checked everywhere. The points are test days C01 of the open
 * milk-recording data (data set milkman of R package doBy 4.7.2, there after Friggens, Ridder and Lovendahl 2007, J. Dairy Sci.
 * 90:5453-5467) and weekly fat yields (henderson.milkfat of R package agridat 1.27, there credited to McCulloch and Henderson).
 */
class CurveFitPeerTest {
    private static final double[] DAYS = {15, 45, 72, 103, 132, 165, 192, 227, 258, 283};
    private static final double[] KG = {23.656, 28.23, 28.291, 27.473, 25.668, 24.293, 21.667, 23.001, 17.844, 19.671};
    private static final double[] WEEKLY_FAT_KG = {
        0.31, 0.39, 0.5, 0.58, 0.59, 0.64, 0.68, 0.66, 0.67, 0.7, 0.72, 0.68, 0.65, 0.64, 0.57, 0.48, 0.46, 0.45, 0.31,
        0.33, 0.36, 0.3, 0.26, 0.34, 0.29, 0.31, 0.29, 0.2, 0.15, 0.18, 0.11, 0.07, 0.06, 0.01, 0.01
    };

    // R 4.2.2 nls with exact derivatives and Newton polish; scipy 1.10.1 least_squares agrees to 3e-13
    @Test
    void woodOfTenTestsIsThatOfR() {
        CurveEstimate fit = LactationCurves.WOOD.estimate(DAYS, KG);

        assertParameters(fit, 13.7780047712798, 0.224310530846183, 0.00346181903751445);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(10.7016638409372, Offset.offset(1e-11));
        assertThat(fit.curve().orElseThrow().totalKg(1, 305)).isCloseTo(7234.90714814851, Offset.offset(1e-7));
    }

    // R 4.2.2 lm; numpy 1.24.2 lstsq agrees
    @Test
    void wilminkOfTenTestsIsThatOfR() {
        CurveEstimate fit = LactationCurves.WILMINK.estimate(DAYS, KG);

        assertParameters(fit, 32.1245709022668, -16.3979704337877, -0.0478595329324182);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(9.72322163311666, Offset.offset(1e-11));
        assertThat(fit.curve().orElseThrow().totalKg(1, 305)).isCloseTo(7244.80035160614, Offset.offset(1e-7));
    }

    // Henderson and McCulloch 1990, Transform or link?, Cornell BU-049-MA (report not found; values by R 4.2.2 nls and
    // glm, scipy 1.10.1)
    @Test
    void weeklyFatOfOneCowByTheNonlinearFit() {
        double[] weeks = new double[WEEKLY_FAT_KG.length];
        for (int i = 0; i < weeks.length; i++) {
            weeks[i] = i + 1;
        }

        CurveEstimate fit = LactationCurves.WOOD.estimate(weeks, WEEKLY_FAT_KG);

        assertParameters(fit, 0.243564934861, 1.00550568944, 0.128617557018);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(0.0920221776218, Offset.offset(1e-12));
        assertThat(fit.curve().orElseThrow().peakDaysInMilk().orElseThrow())
                .isCloseTo(7.81779496323, Offset.offset(1e-10));
        assertThat(fit.curve().orElseThrow().peakMilkKgPerDay().orElseThrow())
                .isCloseTo(0.704580327208, Offset.offset(1e-11));
    }

    // log-linear fit of the same series: R 4.2.2 lm on logarithms
    @Test
    void weeklyFatOfOneCowOnLogarithmsIsFarFromThat() {
        double[] weeks = new double[WEEKLY_FAT_KG.length];
        for (int i = 0; i < weeks.length; i++) {
            weeks[i] = i + 1;
        }

        CurveEstimate fit = LactationCurves.WOOD_LOG_LINEAR.estimate(weeks, WEEKLY_FAT_KG);

        assertParameters(fit, 0.211061022744, 1.39371345612, 0.185714845655);
    }

    // From here on R 4.2.2, scripts/curve_peers.R. nls stops about six digits in, hence the wider tolerances.
    @Test
    void spreadAndCriteriaOfWoodAreThoseOfR() {
        CurveEstimate fit = LactationCurves.WOOD.estimate(DAYS, KG);

        assertErrors(fit, 1e-4, 2.317938537, 0.049389292332, 0.000515541628);
        assertThat(fit.residualSdKg().orElseThrow()).isCloseTo(1.23645020932, Offset.offset(1e-9));
        assertThat(fit.aic().orElseThrow()).isCloseTo(37.0569120195, Offset.offset(1e-8));
        assertThat(fit.bic().orElseThrow()).isCloseTo(38.2672523915, Offset.offset(1e-8));
        // with n 10 and k 4 the correction is 2 * 4 * 5 / 5
        assertThat(fit.aicc().orElseThrow()).isCloseTo(37.0569120195 + 8, Offset.offset(1e-8));
        assertThat(fit.peakDaysStandardError().orElseThrow()).isCloseTo(6.579778, Offset.offset(1e-3));
        assertThat(fit.peakMilkStandardErrorKgPerDay().orElseThrow()).isCloseTo(0.648792613, Offset.offset(1e-4));
    }

    @Test
    void spreadCriteriaAndStudentizedResidualsOfWilminkAreThoseOfR() {
        CurveEstimate fit = LactationCurves.WILMINK.estimate(DAYS, KG);
        double[] studentized = {
            -0.0219709437312,
            -0.0116035036066,
            0.0561460065420,
            0.3342388557277,
            -0.0998616255478,
            0.0582528510922,
            -1.1833814970465,
            1.9242355546025,
            -2.6141200354109,
            1.2220413434980
        };

        assertErrors(fit, 1e-10, 1.04081245603190, 3.41569030756583, 0.00553789092476);
        assertThat(fit.parameters().get(3).standardError()).isEmpty();
        assertThat(fit.aic().orElseThrow()).isCloseTo(36.0980898071, Offset.offset(1e-9));
        assertThat(fit.bic().orElseThrow()).isCloseTo(37.3084301791, Offset.offset(1e-9));
        for (int i = 0; i < studentized.length; i++) {
            assertThat(fit.studentizedResidual(i).orElseThrow()).isCloseTo(studentized[i], Offset.offset(1e-9));
        }
    }

    @Test
    void woodOnLogarithmsIsThatOfR() {
        CurveEstimate fit = LactationCurves.WOOD_LOG_LINEAR.estimate(DAYS, KG);

        assertParameters(fit, Math.exp(2.63321540806217), 0.21993748459585, 0.00339606521052);
        assertErrors(fit, 1e-9, Math.exp(2.63321540806217) * 0.194787967250790, 0.057191823332919, 0.000575085861517);
        assertThat(fit.studentizedResidual(8).orElseThrow()).isCloseTo(-2.5765406175737, Offset.offset(1e-9));
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(10.745800619292, Offset.offset(1e-11));
    }

    @Test
    void aliSchaefferIsThatOfR() {
        CurveEstimate fit = LactationCurves.ALI_SCHAEFFER.estimate(DAYS, KG);

        assertParameters(
                fit, 58.4062381002786, -61.0809636538458, 21.1372889274533, -12.626653025669, 0.687595278636453);
        assertErrors(fit, 1e-9, 89.5193981192, 136.3873330703, 48.8629332094, 54.3022193701, 8.9277986697);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(9.29929283010564, Offset.offset(1e-11));
        assertThat(fit.curve().orElseThrow().peakDaysInMilk().orElseThrow())
                .isCloseTo(60.0871927760046, Offset.offset(1e-5));
        assertThat(fit.studentizedResidual(7).orElseThrow()).isCloseTo(2.8223078717164, Offset.offset(1e-9));
    }

    @Test
    void legendreOfOrder4IsThatOfR() {
        CurveEstimate fit = LactationCurves.LEGENDRE_4.estimate(DAYS, KG);

        assertParameters(
                fit, 33.7217222305273, -4.06524534068834, -1.6210328213738, 1.55259281462475, -0.760376453222579);
        assertThat(fit.curve().orElseThrow().peakDaysInMilk().orElseThrow())
                .isCloseTo(70.9498494684856, Offset.offset(1e-5));
    }

    @Test
    void dijkstraIsThatOfR() {
        CurveEstimate fit = LactationCurves.DIJKSTRA.estimate(DAYS, KG);

        assertParameters(fit, 18.1924235446259, 0.0264637078755495, 0.0421898870311504, 0.00210193090769839);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(9.40145192721915, Offset.offset(1e-11));
    }

    // R lm
    @Test
    void guoSwalveIsThatOfR() {
        CurveEstimate fit = LactationCurves.GUO_SWALVE.estimate(DAYS, KG);

        assertParameters(fit, 3.81840745299, -3.09326970128, 11.80746011271);
        assertErrors(fit, 1e-9, 4.81174042306, 0.44392221998, 2.04532622028);
    }

    // parameters: scipy 1.17.1 least_squares and Gauss-Newton polish with complex-step derivatives
    // (scripts/curve_peers.py), standard errors R nls
    @Test
    void nelderIsThatOfScipyAndR() {
        CurveEstimate fit = LactationCurves.NELDER.estimate(DAYS, KG);

        assertParameters(1e-10, fit, 0.239010096734, 0.0252779674182, 9.22218315133e-05);
        assertErrors(fit, 1e-4, 5.16824729634e-02, 2.07485042054e-03, 1.15966229857e-05);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(10.0711301096, Offset.offset(1e-9));
    }

    @Test
    void cobbyLeDuIsThatOfScipyAndR() {
        CurveEstimate fit = LactationCurves.COBBY_LE_DU.estimate(DAYS, KG);

        assertParameters(1e-10, fit, 31.3528445831, 0.0443754151143, 0.0985906471533);
        assertErrors(fit, 1e-4, 1.01298817531728, 0.00548064437852, 0.01365396543830);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(10.5193379428, Offset.offset(1e-9));
    }

    @Test
    void wilminkWithFreeRateIsThatOfScipyAndR() {
        CurveEstimate fit = LactationCurves.WILMINK_FREE_RATE.estimate(DAYS, KG);

        assertParameters(1e-10, fit, 32.0420963382, -16.848650299, -0.0474933460162, 0.0523495462054);
        assertErrors(fit, 1e-4, 1.65762646125252, 8.17415374089904, 0.00806962775325, 0.03688514066857);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(9.71516705864, Offset.offset(1e-9));
    }

    // scipy 1.17.1 make_smoothing_spline(lam=1e5 and 3e5), scripts/curve_peers.py
    @Test
    void smoothingSplineIsThatOfScipy() {
        CurveEstimate fit = new NaturalSplineModel(1e5).estimate(DAYS, KG);
        LactationCurve curve = fit.curve().orElseThrow();

        assertParameters(
                1e-8,
                fit,
                25.87654926,
                26.7652212876,
                27.1175515079,
                26.7889529812,
                25.8624910817,
                24.3806888197,
                23.0520285835,
                21.3623043638,
                19.8540059014,
                18.7342062131);
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(18.4881673781, Offset.offset(1e-7));
        assertThat(curve.milkKgPerDay(30)).isCloseTo(26.3583570426, Offset.offset(1e-7));
        assertThat(curve.milkKgPerDay(250)).isCloseTo(20.2345335741, Offset.offset(1e-7));
        assertThat(curve.slopeKgPerDayPerDay(100)).isCloseTo(-0.0205094210963, Offset.offset(1e-9));
        assertThat(new NaturalSplineModel(3e5).estimate(DAYS, KG).rssKg2().orElseThrow())
                .isCloseTo(24.5469945327, Offset.offset(1e-7));
    }

    private static void assertErrors(CurveEstimate fit, double relative, double... expected) {
        for (int k = 0; k < expected.length; k++) {
            assertThat(fit.parameters().get(k).standardError().orElseThrow())
                    .as(fit.parameters().get(k).name())
                    .isCloseTo(expected[k], Offset.offset(relative * expected[k]));
        }
    }

    private static void assertParameters(CurveEstimate fit, double... expected) {
        assertParameters(1e-10, fit, expected);
    }

    private static void assertParameters(double relative, CurveEstimate fit, double... expected) {
        for (int k = 0; k < expected.length; k++) {
            assertThat(fit.parameters().get(k).value())
                    .as(fit.parameters().get(k).name())
                    .isCloseTo(expected[k], Offset.offset(relative * Math.abs(expected[k])));
        }
    }
}
