package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** a 22, b -1.9, c 6.5. Values computed apart from this library with numpy. */
class GuoSwalveCurvePublishedTest {
    private static final GuoSwalveCurve CURVE = new GuoSwalveCurve(22, -1.9, 6.5);

    @Test
    void peakIsOnDay47() {
        assertThat(CURVE.peakDaysInMilk().orElseThrow()).isCloseTo(46.814404, within(5e-7));
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow()).isCloseTo(34.000241, within(5e-7));
    }

    @Test
    void milkOnDays1And305AndTheSum() {
        assertThat(CURVE.milkKgPerDay(1)).isCloseTo(20.1, within(1e-12));
        assertThat(CURVE.milkKgPerDay(305)).isCloseTo(25.999953, within(5e-7));
        assertThat(CURVE.totalKg(1, 305)).isCloseTo(9329.361795, within(5e-7));
    }

    @Test
    void shapesBySign() {
        assertThat(new GuoSwalveCurve(22, -1.9, -1).peakDaysInMilk()).isEmpty();
        assertThat(new GuoSwalveCurve(22, -1.9, -1).shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new GuoSwalveCurve(22, 1.9, 1).shape()).isEqualTo(CurveShape.RISING);
        assertThat(new GuoSwalveCurve(22, 1.9, -8).shape()).isEqualTo(CurveShape.REVERSED);
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
