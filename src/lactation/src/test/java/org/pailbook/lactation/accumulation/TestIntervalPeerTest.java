package org.pailbook.lactation.accumulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against our own slow plain form: the yield of every single day, read off the straight lines and added up. */
class TestIntervalPeerTest {
    private static final long SEED = 41;

    private static double yieldOn(double day, double[] days, double[] kg) {
        if (day <= days[0]) {
            return kg[0];
        }
        for (int i = 1; i < days.length; i++) {
            if (day <= days[i]) {
                return kg[i - 1] + (kg[i] - kg[i - 1]) * (day - days[i - 1]) / (days[i] - days[i - 1]);
            }
        }
        return kg[days.length - 1];
    }

    @Test
    void theSumIsThatOfDayByDayTrapezoids() {
        Random random = new Random(SEED);
        for (int round = 0; round < 300; round++) {
            double[] days = randomDays(random);
            double[] kg = random.doubles(days.length, 3, 50).toArray();
            int end = 1 + random.nextInt(400);
            double slow = 0;
            for (int day = 1; day <= end; day++) {
                slow += (yieldOn(day - 1, days, kg) + yieldOn(day, days, kg)) / 2;
            }
            assertThat(TestIntervalMethod.sumKg(days, kg, days.length, end))
                    .as("seed " + SEED + ", round " + round)
                    .isCloseTo(slow, within(1e-8));
        }
    }

    @Test
    void theSumOfDailyYieldsIsHigherByHalfOfLastMinusFirst() {
        // derived: the discrete sum counts the end of every day, the trapezoid its middle; the two never agree exactly
        Random random = new Random(SEED);
        for (int round = 0; round < 100; round++) {
            double[] days = randomDays(random);
            double[] kg = random.doubles(days.length, 3, 50).toArray();
            int end = (int) days[days.length - 1];
            double daily = 0;
            for (int day = 1; day <= end; day++) {
                daily += yieldOn(day, days, kg);
            }
            double difference = daily - TestIntervalMethod.sumKg(days, kg, days.length, end);
            assertThat(difference)
                    .as("seed " + SEED + ", round " + round)
                    .isCloseTo((kg[kg.length - 1] - kg[0]) / 2, within(1e-8));
        }
    }

    private static double[] randomDays(Random random) {
        double[] days = new double[1 + random.nextInt(12)];
        int day = 0;
        for (int i = 0; i < days.length; i++) {
            day += 5 + random.nextInt(60);
            days[i] = day;
        }
        return days;
    }
}
