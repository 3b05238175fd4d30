package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** a 18, b .025, c .05, d .0022. Values computed apart from this library with numpy. */
class DijkstraCurvePublishedTest {
    private static final DijkstraCurve CURVE = new DijkstraCurve(18, 0.025, 0.05, 0.0022);

    @Test
    void peakIsOnDay49() {
        assertThat(CURVE.peakDaysInMilk().orElseThrow()).isCloseTo(48.608369, within(5e-7));
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow()).isCloseTo(25.519257, within(5e-7));
    }

    // the closed form of the peak yield, a (d/b)^(d/c) exp((b-d)/c)
    @Test
    void peakMilkIsItsClosedForm() {
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow())
                .isCloseTo(
                        18 * Math.pow(0.0022 / 0.025, 0.0022 / 0.05) * Math.exp((0.025 - 0.0022) / 0.05),
                        within(1e-12));
    }

    @Test
    void milkAtCalvingIsAOnDay305FifteenKgAndTheSumOfDays() {
        assertThat(CURVE.milkKgPerDay(0)).isEqualTo(18);
        assertThat(CURVE.milkKgPerDay(305)).isCloseTo(15.170787, within(5e-7));
        assertThat(CURVE.totalKg(1, 305)).isCloseTo(6340.599988, within(5e-7));
    }

    @Test
    void lossAboveGrowthHasNoPeak() {
        assertThat(new DijkstraCurve(18, 0.002, 0.05, 0.0022).peakDaysInMilk()).isEmpty();
        assertThat(new DijkstraCurve(18, 0.002, 0.05, 0.0022).shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new DijkstraCurve(18, 0.02, 0.05, -0.001).shape()).isEqualTo(CurveShape.RISING);
        assertThat(new DijkstraCurve(18, -0.02, 0.05, -0.001).shape()).isEqualTo(CurveShape.REVERSED);
        assertThatIllegalArgumentException().isThrownBy(() -> new DijkstraCurve(18, 0.02, 0, 0.001));
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
