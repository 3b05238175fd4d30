package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wilmink's curve with a 30, b -10 kg/d, c -0.04 kg/d/d, k 0.05. Values computed apart from this library with numpy. */
class WilminkCurvePublishedTest {
    private static final WilminkCurve X = new WilminkCurve(30, -10, -0.04);

    @ParameterizedTest
    @CsvSource({"1,20.447706", "150,23.994469", "305,17.799998"})
    void milkOfADay(double day, double kg) {
        assertThat(X.milkKgPerDay(day)).isCloseTo(kg, Offset.offset(5e-7));
    }

    @Test
    void peakIsOnDay51With27Point18Kg() {
        assertThat(X.peakDaysInMilk().orElseThrow()).isCloseTo(50.514573, Offset.offset(5e-7));
        assertThat(X.peakMilkKgPerDay().orElseThrow()).isCloseTo(27.179417, Offset.offset(5e-7));
    }

    @Test
    void sumOfDays1To305IsNotTheIntegralFrom0() {
        assertThat(X.totalKg(1, 305)).isCloseTo(7088.358382, Offset.offset(5e-7));
        assertThat(X.integralKg(0, 305)).isCloseTo(7089.500048, Offset.offset(5e-7));
    }

    @Test
    void integralsOverAdjoiningSpansAddUp() {
        assertThat(X.integralKg(0, 100) + X.integralKg(100, 305)).isCloseTo(7089.500048, Offset.offset(5e-7));
        assertThat(X.integralKg(40, 40)).isEqualTo(0);
    }

    @Test
    void aDeclineSteeperThanTheRiseHasNoPeakAfterCalving() {
        // -k b = 0.5 kg/d/d at calving is less than the decline of 0.6
        WilminkCurve steep = new WilminkCurve(30, -10, -0.6);

        assertThat(steep.shape()).isEqualTo(CurveShape.STANDARD);
        assertThat(steep.peakDaysInMilk()).isEmpty();
        assertThat(new WilminkCurve(30, 5, -0.04).shape()).isEqualTo(CurveShape.FALLING);
        assertThat(new WilminkCurve(30, -5, 0.04).shape()).isEqualTo(CurveShape.RISING);
        assertThat(new WilminkCurve(30, 5, 0.04).shape()).isEqualTo(CurveShape.REVERSED);
    }

    @Test
    void totalsWantDaysInOrder() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> X.totalKg(10, 4))
                .withMessage("toDaysInMilk (4) must be at least fromDaysInMilk (10)");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> X.totalKg(0, 4))
                .withMessage("fromDaysInMilk (0) must be at least 1");
        assertThatIllegalArgumentException().isThrownBy(() -> new WilminkCurve(30, -10, -0.04, 0));
    }
}
