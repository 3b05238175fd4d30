package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Data of another origin: protein of cow B01 in the data set Milk of R package nlme 3.1-162, percent by weeks since calving;
 * there after Diggle, Liang and Zeger 1994, Analysis of Longitudinal Data (from memory, as the manual cites it). Fits by R 4.2.2,
 * scripts/curve_peers.R. Protein falls and rises again, so Wood's curve is a valley here: b and c are both below zero.
 */
class OtherHerdPeerTest {
    private static final double[] WEEKS = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19};
    private static final double[] PROTEIN_PCT = {
        3.63, 3.57, 3.47, 3.65, 3.89, 3.73, 3.77, 3.9, 3.78, 3.82, 3.83, 3.71, 4.1, 4.02, 4.13, 4.08, 4.22, 4.44, 4.3
    };

    @Test
    void woodIsAValleyWithTheParametersOfR() {
        CurveEstimate fit = LactationCurves.WOOD.estimate(WEEKS, PROTEIN_PCT);

        assertFit(fit, 1e-5, new double[] {3.5664617696973, -0.0277892117669, -0.0144360443283}, new double[] {
            0.08519013596808, 0.02454861456002, 0.00341131260483
        });
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(0.207474693786, within(1e-11));
        assertThat(fit.aic().orElseThrow()).isCloseTo(-23.9068485261, within(1e-8));
        assertThat(fit.bic().orElseThrow()).isCloseTo(-20.1290926095, within(1e-8));
        assertThat(fit.curve().orElseThrow().shape()).isEqualTo(CurveShape.REVERSED);
        assertThat(fit.curve().orElseThrow().peakDaysInMilk()).isEmpty();
        assertThat(fit.peakDaysStandardError()).isEmpty();
        assertThat(fit.peakMilkStandardErrorKgPerDay()).isEmpty();
    }

    @Test
    void wilminkHasTheParametersOfR() {
        CurveEstimate fit = LactationCurves.WILMINK.estimate(WEEKS, PROTEIN_PCT);

        assertFit(fit, 1e-9, new double[] {1.578177465393, 2.022475787859, 0.104545171216}, new double[] {
            1.1690237814815, 1.2428062782365, 0.0388253637281
        });
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(0.200180002814, within(1e-11));
        assertThat(fit.studentizedResidual(11).orElseThrow()).isCloseTo(-2.54416294007458, within(1e-9));
    }

    @Test
    void guoSwalveHasTheParametersOfR() {
        CurveEstimate fit = LactationCurves.GUO_SWALVE.estimate(WEEKS, PROTEIN_PCT);

        assertFit(fit, 1e-9, new double[] {3.078837653984, 0.561016465818, -0.420555443727}, new double[] {
            0.104502789074, 0.138608984301, 0.170868335614
        });
        assertThat(fit.rssKg2().orElseThrow()).isCloseTo(0.226060470514, within(1e-11));
    }

    private static void assertFit(CurveEstimate fit, double relative, double[] parameters, double[] errors) {
        for (int k = 0; k < parameters.length; k++) {
            CurveParameter ours = fit.parameters().get(k);
            assertThat(ours.value())
                    .as(ours.name())
                    .isCloseTo(parameters[k], within(relative * Math.abs(parameters[k])));
            assertThat(ours.standardError().orElseThrow())
                    .as(ours.name())
                    .isCloseTo(errors[k], within(relative * errors[k]));
        }
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
