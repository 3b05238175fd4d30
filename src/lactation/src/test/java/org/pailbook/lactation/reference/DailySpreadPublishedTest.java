package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sum of all elements of the autoregressive matrix: {@code 1'A1 = (n (1 - r^2) - 2 r (1 - r^n)) / (1 - r)^2}. */
class DailySpreadPublishedTest {

    // Values derived outside this project from the geometric series and, apart from that, as a double sum; both agree.
    @ParameterizedTest
    @CsvSource({"0.995, 59351.499182", "0.998, 76661.522814"})
    void varianceOf305DaysIsThatOfTheClosedForm(double r, double expected) {
        assertThat(DailySpread.constant(1, r, 0).varianceOfTotal(305)).isCloseTo(expected, within(1e-4));
        double closed = (305 * (1 - r * r) - 2 * r * (1 - Math.pow(r, 305))) / ((1 - r) * (1 - r));
        assertThat(closed).isCloseTo(expected, within(1e-4));
    }

    // Row sum of the matrix at day t: (1 + r - r^t - r^(n + 1 - t)) / (1 - r), the same geometric series.
    @ParameterizedTest
    @CsvSource({"1", "20", "153", "304", "305"})
    void covarianceOfADayWithTheTotalIsTheRowSum(int day) {
        double r = 0.995;
        double row = (1 + r - Math.pow(r, day) - Math.pow(r, 306 - day)) / (1 - r);
        assertThat(DailySpread.constant(5, r, 0.20).covarianceWithTotal(day, 305))
                .isCloseTo(25 * (0.80 * row + 0.20), within(1e-8));
    }
}
