package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** a 32, b .05, c .08. Values computed apart from this library with numpy. */
class CobbyLeDuCurvePublishedTest {
    private static final CobbyLeDuCurve CURVE = new CobbyLeDuCurve(32, 0.05, 0.08);

    @Test
    void peakIsOnDay49() {
        assertThat(CURVE.peakDaysInMilk().orElseThrow()).isCloseTo(49.196744, within(5e-7));
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow()).isCloseTo(28.915163, within(5e-7));
    }

    @Test
    void milkOnDay305AndTheSum() {
        assertThat(CURVE.milkKgPerDay(0)).isEqualTo(0);
        assertThat(CURVE.milkKgPerDay(305)).isCloseTo(16.75, within(0.005));
        assertThat(CURVE.totalKg(1, 305)).isCloseTo(7042.536689, within(5e-7));
    }

    @Test
    void shapesBySign() {
        assertThat(new CobbyLeDuCurve(32, 3, 0.08).peakDaysInMilk()).isEmpty();
        assertThat(new CobbyLeDuCurve(32, 3, 0.08).shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new CobbyLeDuCurve(32, -0.01, 0.08).shape()).isEqualTo(CurveShape.RISING);
        assertThatIllegalArgumentException().isThrownBy(() -> new CobbyLeDuCurve(32, 0.05, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> CURVE.totalKg(5, 4));
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
