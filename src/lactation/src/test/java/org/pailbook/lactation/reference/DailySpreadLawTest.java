package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DailySpreadLawTest {
    private static final long SEED = 17;

    @Test
    void runningSumsEqualTheSumsOfTheSingleCovariances() {
        Random random = new Random(SEED);
        double[] sd = new double[400];
        for (int i = 0; i < sd.length; i++) {
            sd[i] = 2 + 6 * random.nextDouble();
        }
        DailySpread spread = DailySpread.ofDays(sd, 0.991, 0.3);
        for (int toDay : new int[] {1, 2, 100, 305, 640}) {
            double total = 0;
            for (int day = 1; day <= 700; day += 7) {
                double sum = 0;
                for (int other = 1; other <= toDay; other++) {
                    sum += spread.covariance(day, other);
                }
                assertThat(spread.covarianceWithTotal(day, toDay))
                        .as("seed %d, day %d, to day %d", SEED, day, toDay)
                        .isCloseTo(sum, within(1e-7));
            }
            for (int day = 1; day <= toDay; day++) {
                total += spread.covarianceWithTotal(day, toDay);
            }
            assertThat(spread.varianceOfTotal(toDay)).isCloseTo(total, within(1e-9 * total));
        }
    }

    @Test
    void impossibleValuesAreRefused() {
        assertThatThrownBy(() -> DailySpread.constant(0, 0.995, 0.2)).hasMessageContaining("sdKgPerDay (0.0)");
        assertThatThrownBy(() -> DailySpread.constant(5, 1.1, 0.2)).hasMessageContaining("correlation (1.1)");
        assertThatThrownBy(() -> DailySpread.constant(5, 0.9, -0.1)).hasMessageContaining("dailyErrorShare (-0.1)");
    }
}
