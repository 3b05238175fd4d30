package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** p0 20, p1 -8, p2 -1, p3 6, p4 -1.2. Values computed apart from this library with numpy. */
class AliSchaefferCurvePublishedTest {
    private static final AliSchaefferCurve CURVE = new AliSchaefferCurve(20, -8, -1, 6, -1.2);

    @Test
    void milkOfADay() {
        assertThat(CURVE.milkKgPerDay(1)).isCloseTo(15.029270, within(5e-7));
        assertThat(CURVE.milkKgPerDay(30)).isCloseTo(26.664176, within(5e-7));
        assertThat(CURVE.milkKgPerDay(60)).isCloseTo(24.970810, within(5e-7));
        assertThat(CURVE.milkKgPerDay(150)).isCloseTo(19.477393, within(5e-7));
        assertThat(CURVE.milkKgPerDay(305)).isCloseTo(11.0, within(1e-12));
    }

    @Test
    void peakIsOnDay20() {
        assertThat(CURVE.peakDaysInMilk().orElseThrow()).isCloseTo(20.04, within(0.005));
        assertThat(CURVE.peakMilkKgPerDay().orElseThrow()).isCloseTo(26.91059, within(5e-6));
        assertThat(CURVE.shape()).isEqualTo(CurveShape.STANDARD);
    }

    // the sum of the five columns over days 1 to 305: 305, 153, 102.16721311, 301.22063235, 581.11943031
    @Test
    void sumOfDays1To305() {
        assertThat(CURVE.totalKg(1, 305)).isCloseTo(5883.813265, within(5e-7));
        assertThat(new AliSchaefferCurve(0, 1, 0, 0, 0).totalKg(1, 305)).isCloseTo(153, within(1e-9));
        assertThat(new AliSchaefferCurve(0, 0, 1, 0, 0).totalKg(1, 305)).isCloseTo(102.16721311, within(5e-9));
        assertThat(new AliSchaefferCurve(0, 0, 0, 1, 0).totalKg(1, 305)).isCloseTo(301.22063235, within(5e-9));
        assertThat(new AliSchaefferCurve(0, 0, 0, 0, 1).totalKg(1, 305)).isCloseTo(581.11943031, within(5e-9));
    }

    @Test
    void aCurveThatIsHighestOnDay1HasNoInnerPeak() {
        AliSchaefferCurve falling = new AliSchaefferCurve(20, -8, 0, 1, 0);

        assertThat(falling.peakDaysInMilk()).isEmpty();
        assertThat(falling.peakMilkKgPerDay()).isEmpty();
        assertThat(falling.shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new AliSchaefferCurve(20, 8, 0, -1, 0).shape()).isEqualTo(CurveShape.RISING);
        assertThat(new AliSchaefferCurve(20, 8, 0, 1, 0).shape()).isEqualTo(CurveShape.REVERSED);
    }

    private static Offset<Double> within(double tolerance) {
        return Offset.offset(tolerance);
    }
}
