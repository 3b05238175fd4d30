package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Normalized Legendre polynomials. Values computed apart from this library with numpy. */
class LegendreCurvePublishedTest {
    // day 60 of the range 5 to 305 is x = -0.633333
    @Test
    void polynomialsOnDay60OfTheRange5To305() {
        double[] phi = new LegendreCurve(5, 305, 0, 0, 0, 0, 0).gradient(60);

        assertThat(phi).containsExactly(new double[] {.707107, -.775672, .160749, .589138, -.902139}, within(5e-7));
    }

    // sums of the five polynomials over days 1 to 305 of the range 1 to 305; by symmetry the odd ones vanish
    @Test
    void sumsOfTheFirstFivePolynomialsOverDays1To305() {
        double[] expected = {215.667568, 0, 1.586340, 0, 2.144580};
        for (int j = 0; j < expected.length; j++) {
            double[] coefficients = new double[5];
            coefficients[j] = 1;
            assertThat(new LegendreCurve(1, 305, coefficients).totalKg(1, 305)).isCloseTo(expected[j], within(5e-7));
        }
    }

    @Test
    void milkIsTheWeightedSumOfThePolynomials() {
        LegendreCurve curve = new LegendreCurve(5, 305, 30, -4, -1.5, 1.2, -0.7);

        // 30 * .707107 + 4 * .775672 - 1.5 * .160749 + 1.2 * .589138 + 0.7 * .902139
        assertThat(curve.milkKgPerDay(60)).isCloseTo(25.413239, within(3e-5));
        assertThat(curve.order()).isEqualTo(4);
        assertThat(curve.parameters()).extracting(CurveParameter::name).containsExactly("c0", "c1", "c2", "c3", "c4");
    }

    @Test
    void rangesAndOrdersThatCannotBeAreProgrammingErrors() {
        assertThatIllegalArgumentException().isThrownBy(() -> new LegendreCurve(305, 305, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new LegendreCurve(5, 305));
        assertThatIllegalArgumentException().isThrownBy(() -> new LegendreModel(0, 5, 305));
        assertThatIllegalArgumentException().isThrownBy(() -> new LegendreModel(3, 5, 5));
        assertThat(new LegendreModel(3, 1, 305).firstDay()).isEqualTo(1);
        assertThat(new LegendreModel(3, 1, 305).lastDay()).isEqualTo(305);
    }

    // ours: one test more than parameters up to four parameters, two more from five on
    @Test
    void fiveParametersWantSevenTests() {
        assertThat(LactationCurves.LEGENDRE_3.leastTests()).isEqualTo(5);
        assertThat(LactationCurves.LEGENDRE_4.leastTests()).isEqualTo(7);
        assertThat(LactationCurves.LEGENDRE_5.leastTests()).isEqualTo(8);
        assertThat(LactationCurves.ALI_SCHAEFFER.leastTests()).isEqualTo(7);
    }

    @Test
    void curvesAreEqualWhenRangeAndCoefficientsAre() {
        LegendreCurve curve = new LegendreCurve(5, 305, 1, 2);

        assertThat(curve).isEqualTo(new LegendreCurve(5, 305, 1, 2)).hasSameHashCodeAs(new LegendreCurve(5, 305, 1, 2));
        assertThat(curve).isNotEqualTo(new LegendreCurve(1, 305, 1, 2));
        assertThat(curve).isNotEqualTo(new LegendreCurve(5, 300, 1, 2));
        assertThat(curve).isNotEqualTo(new LegendreCurve(5, 305, 1, 3));
        assertThat(curve).isNotEqualTo("another thing");
        assertThat(curve.toString()).contains("5.0 to 305.0", "[1.0, 2.0]");
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
