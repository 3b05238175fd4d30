package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * A natural spline through (1, 20), (155, 25), (305, 15). Values by scipy 1.17.1, CubicSpline with natural ends
 * (scripts/curve_peers.py).
 */
class NaturalSplineCurvePublishedTest {
    private static final double[] DAYS = {1, 155, 305};
    private static final double[] KG = {20, 25, 15};
    private static final NaturalSplineCurve CURVE = new NaturalSplineCurve(DAYS, KG);

    @Test
    void milkBetweenTheKnotsAndTheIntegral() {
        assertThat(CURVE.milkKgPerDay(60)).isCloseTo(23.179606, within(5e-7));
        assertThat(CURVE.milkKgPerDay(230)).isCloseTo(21.375732, within(5e-7));
        assertThat(CURVE.slopeKgPerDayPerDay(60)).isCloseTo(0.0465205082142, within(5e-13));
        assertThat(CURVE.integralKg(1, 305)).isCloseTo(6751.448268, within(5e-7));
        assertThat(CURVE.integralKg(20, 155) + CURVE.integralKg(155, 280))
                .isCloseTo(CURVE.integralKg(20, 280), within(1e-9));
    }

    @Test
    void itRunsThroughItsKnotsAndStraightBeyondThem() {
        for (int i = 0; i < DAYS.length; i++) {
            assertThat(CURVE.milkKgPerDay(DAYS[i])).isCloseTo(KG[i], within(1e-12));
        }
        double slopeAtEnd = CURVE.slopeKgPerDayPerDay(305);
        assertThat(CURVE.milkKgPerDay(315)).isCloseTo(15 + 10 * slopeAtEnd, within(1e-12));
        assertThat(CURVE.slopeKgPerDayPerDay(400)).isEqualTo(slopeAtEnd);
        assertThat(CURVE.milkKgPerDay(-9)).isCloseTo(20 - 10 * CURVE.slopeKgPerDayPerDay(1), within(1e-12));
    }

    @Test
    void slopeAndBendAreContinuousAtAKnot() {
        NaturalSplineCurve curve =
                new NaturalSplineCurve(new double[] {5, 30, 60, 120, 200, 305}, new double[] {20, 28, 30, 26, 22, 12});
        for (double knot : new double[] {30, 60, 120, 200}) {
            double step = 1e-3;
            double before = curve.slopeKgPerDayPerDay(knot - step);
            double at = curve.slopeKgPerDayPerDay(knot);
            double after = curve.slopeKgPerDayPerDay(knot + step);
            assertThat(after).isCloseTo(at, within(1e-4));
            assertThat((after - at) / step).isCloseTo((at - before) / step, within(1e-5));
        }
        assertThat((curve.slopeKgPerDayPerDay(5.001) - curve.slopeKgPerDayPerDay(5)) / 0.001)
                .isCloseTo(0, within(1e-5));
        assertThat(curve.peakDaysInMilk().orElseThrow()).isBetween(30.0, 60.0);
        assertThat(curve.shape()).isEqualTo(CurveShape.STANDARD);
    }

    @Test
    void knotsThatCannotBeAreProgrammingErrors() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new NaturalSplineCurve(new double[] {1, 2}, new double[] {1, 2}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new NaturalSplineCurve(new double[] {1, 2, 3}, new double[] {1, 2}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new NaturalSplineCurve(new double[] {1, 2, 2}, new double[] {1, 2, 3}));
        assertThatIllegalArgumentException().isThrownBy(() -> new NaturalSplineModel(-1));
        assertThatIllegalArgumentException().isThrownBy(() -> new NaturalSplineModel(Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> new NaturalSplineModel(Double.POSITIVE_INFINITY));
    }

    @Test
    void splinesAreEqualWhenTheirKnotsAre() {
        assertThat(CURVE)
                .isEqualTo(new NaturalSplineCurve(DAYS, KG))
                .hasSameHashCodeAs(new NaturalSplineCurve(DAYS, KG));
        assertThat(CURVE).isNotEqualTo(new NaturalSplineCurve(DAYS, new double[] {20, 25, 16}));
        assertThat(CURVE).isNotEqualTo(new NaturalSplineCurve(new double[] {1, 155, 304}, KG));
        assertThat(CURVE).isNotEqualTo("another thing");
        assertThat(CURVE.toString()).contains("155.0", "25.0");
        assertThat(CURVE.parameters()).extracting(CurveParameter::name).first().isEqualTo("y(1.000)");
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
