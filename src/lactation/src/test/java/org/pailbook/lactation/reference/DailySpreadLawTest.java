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
        DailySpread plain = DailySpread.ofDays(sd, 0.991, 0.3);
        sumsAgree(plain);
        sumsAgree(plain.times(1.7));
        sumsAgree(plain.withEarlyPace(240, 45));
        sumsAgree(DailySpread.ofDays(sd, 0.9, 0.1));
    }

    private static void sumsAgree(DailySpread spread) {
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

    // g(t) = t + 240 (1 - exp(-t / 45)), worked by hand for days 10 and 45: g = 57.82 and 196.71
    @Test
    void earlyWeeksPassFaster() {
        DailySpread spread = DailySpread.constant(1, 0.998, 0).withEarlyPace(240, 45);
        assertThat(spread.covariance(10, 45)).isCloseTo(Math.pow(0.998, 196.71 - 57.82), within(1e-4));
        assertThat(spread.covariance(250, 285)).isCloseTo(Math.pow(0.998, 35), within(2e-3));
    }

    @Test
    void aSpreadTimesTwoHasFourTimesTheVariance() {
        DailySpread spread = DailySpread.constant(3, 0.995, 0.2).withEarlyPace(100, 30);
        assertThat(spread.times(2).varianceOfTotal(305)).isCloseTo(4 * spread.varianceOfTotal(305), within(1e-6));
        assertThat(spread.times(2).covariance(20, 40)).isCloseTo(4 * spread.covariance(20, 40), within(1e-9));
        assertThat(spread.times(2).covarianceWithTotal(20, 305))
                .isCloseTo(4 * spread.covarianceWithTotal(20, 305), within(1e-7));
        assertThat(spread.times(2).withEarlyPace(50, 20).sdPerDay(7)).isEqualTo(6);
        assertThat(spread.withSdPerDay(new double[] {6}).varianceOfTotal(305))
                .isCloseTo(4 * spread.varianceOfTotal(305), within(1e-6));
        assertThat(spread.withSdPerDay(new double[] {6}).covarianceWithTotal(20, 305))
                .isCloseTo(4 * spread.covarianceWithTotal(20, 305), within(1e-7));
    }

    @Test
    void impossibleValuesAreRefused() {
        assertThatThrownBy(() -> DailySpread.constant(0, 0.995, 0.2)).hasMessageContaining("sdPerDay (0.0)");
        assertThatThrownBy(() -> DailySpread.constant(5, 1.1, 0.2)).hasMessageContaining("correlation (1.1)");
        assertThatThrownBy(() -> DailySpread.constant(5, 0.95, -0.1)).hasMessageContaining("dailyErrorShare (-0.1)");
    }
}
