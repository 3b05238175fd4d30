package org.pailbook.lactation.sentence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RoundingLawTest {
    private static final long SEED = 5;

    @Test
    void theQuickWayWritesWhatThePlainWayWrites() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200_000; i++) {
            int decimals = random.nextInt(8);
            double size = Math.pow(10, random.nextInt(12) - 4);
            double number = (random.nextDouble() - 0.5) * size;
            // half of them typed numbers, among which are many exact halves
            double typed = Math.round(number * 1000) / 1000.0;
            for (double each : new double[] {number, typed, -typed}) {
                assertThat(Rounding.halfUp(each, decimals))
                        .as("seed " + SEED + ": " + each + " to " + decimals)
                        .isEqualTo(Rounding.plain(each, decimals));
            }
        }
    }

    @Test
    void aTypedHalfGoesUpAlsoWhereItsBinaryFormIsBelowTheHalf() {
        // 1.005 in binary is 1.00499999999999989...
        assertThat(Rounding.halfUp(1.005, 2)).isEqualTo("1.01");
        assertThat(Rounding.halfUp(0.05, 1)).isEqualTo("0.1");
        assertThat(Rounding.halfUp(-0.05, 1)).isEqualTo("-0.1");
        assertThat(Rounding.halfUp(2.5, 0)).isEqualTo("3");
    }

    @Test
    void missingDecimalsAreShown() {
        assertThat(Rounding.halfUp(4973.2, 2)).isEqualTo("4973.20");
        assertThat(Rounding.halfUp(1e7, 1)).isEqualTo("10000000.0");
    }

    @Test
    void whatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> Rounding.halfUp(Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
