package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** a .25, b .022, c .00006. Values computed apart from this library with numpy and scipy. */
class NelderCurvePublishedTest {
    private static final NelderCurve CURVE = new NelderCurve(0.25, 0.022, 0.00006);

    @Test
    void peakIsOnDay65() {
        assertThat(CURVE.peakDaysInMilk().orElseThrow()).isCloseTo(64.549722, within(5e-7));
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow()).isCloseTo(33.618003, within(5e-7));
    }

    @Test
    void milkOnDay10AndTheSumAndTheIntegral() {
        assertThat(CURVE.milkKgPerDay(10)).isCloseTo(21.008403, within(5e-7));
        assertThat(CURVE.totalKg(1, 305)).isCloseTo(8823.754305, within(5e-7));
        assertThat(CURVE.integralKg(0, 305)).isCloseTo(8811.930583, within(5e-7));
    }

    // the arc tangent form for b^2 < 4 a c, and the double root between the two, against 30,000 trapezoids
    @Test
    void integralsOfTheOtherTwoFormsAreThoseOfManyTrapezoids() {
        for (NelderCurve curve : new NelderCurve[] {
            new NelderCurve(0.9, 0.001, 0.0001),
            new NelderCurve(0.25, 0.01, 0.0001),
            new NelderCurve(0.9, -0.01, 0.0001)
        }) {
            double sum = 0;
            double step = 0.01;
            for (int i = 0; i < 30_000; i++) {
                sum += step * (curve.milkKgPerDay(5 + i * step) + curve.milkKgPerDay(5 + (i + 1) * step)) / 2;
            }
            assertThat(curve.integralKg(5, 305)).isCloseTo(sum, within(1e-3));
        }
    }

    @Test
    void shapesBySignAndAPoleWithinTheDays() {
        NelderCurve pole = new NelderCurve(0.25, -0.022, 0.00006);

        assertThat(pole.peakDaysInMilk()).isEmpty();
        assertThat(pole.isFiniteBetween(1, 305)).isFalse();
        assertThat(pole.isFiniteBetween(1, 11)).isTrue();
        assertThat(pole.isFiniteBetween(1, 12)).isFalse();
        assertThatThrownBy(() -> pole.integralKg(1, 305)).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> new NelderCurve(0.25, 0.02, 0).integralKg(1, 305))
                .isInstanceOf(IllegalStateException.class);
        assertThat(new NelderCurve(-0.1, 0.02, 0.0001).shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new NelderCurve(0.1, 0.02, -0.00001).shape()).isEqualTo(CurveShape.RISING);
        assertThat(new NelderCurve(-0.1, 0.02, -0.00001).shape()).isEqualTo(CurveShape.REVERSED);
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
