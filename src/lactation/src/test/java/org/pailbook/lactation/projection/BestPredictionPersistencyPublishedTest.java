package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.BestPredictionPersistency.Persistency;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.Lactation;

/**
 * Persistency after VanRaden 1998 and Cole and VanRaden 2006 (abstract read). Values worked out from the formula outside this project
 * (numpy), with mean 30 - 10 exp(-.05 t) - .04 t kg, spread 5 kg, r .995, e .20.
 */
class BestPredictionPersistencyPublishedTest {
    private static final LactationStandard STANDARD = WorkedCow.standard(0.995);

    @Test // derived: with a constant spread the balance day is the middle day, by symmetry
    void balanceDayIsTheMiddleOfTheLactation() {
        assertThat(BestPredictionPersistency.balanceDay(STANDARD.spread())).isCloseTo(153, within(1e-9));
    }

    @Test // derived
    void threeTests() {
        Persistency persistency = of(20, 24, 50, 30, 80, 29);
        assertThat(persistency.rawKgDays()).isCloseTo(-2018.9376, within(1e-3));
        assertThat(Math.sqrt(BestPredictionPersistency.variance(STANDARD.spread(), 153)))
                .isCloseTo(49542.6797, within(1e-3));
        assertThat(persistency.standardised()).isCloseTo(-0.040751, within(5e-7));
        assertThat(persistency.reliabilityShare()).isCloseTo(0.281748, within(5e-7));
        // ours: shown from four tests and a reliability of .30 on
        assertThat(persistency.figure().value()).isEmpty();
        assertThat(persistency.figure().findings()).extracting(Finding::code).contains(FindingCode.TOO_FEW_TESTS);
    }

    @Test // derived
    void sixTests() {
        Persistency persistency = of(20, 24, 50, 30, 80, 29, 110, 27, 140, 26, 170, 25);
        assertThat(persistency.standardised()).isCloseTo(0.018336, within(5e-7));
        assertThat(persistency.reliabilityShare()).isCloseTo(0.441049, within(5e-7));
        assertThat(persistency.figure().orThrow()).isCloseTo(0.018336, within(5e-7));
        assertThat(persistency.figure().explanation().total())
                .isCloseTo(persistency.figure().orThrow(), within(1e-12));
    }

    // abstract read: persistency is to be uncorrelated with yield; here over 4,000 lactations drawn from the model with
    // a spread that varies
    @Test
    void trueYieldAndTruePersistencyAreUncorrelated() {
        long seed = 7;
        Random random = new Random(seed);
        double[] sd = new double[305];
        for (int day = 1; day <= 305; day++) {
            sd[day - 1] = 6 - 0.01 * day;
        }
        DailySpread spread = DailySpread.ofDays(sd, 0.995, 0.2);
        double balanceDay = BestPredictionPersistency.balanceDay(spread);
        assertThat(balanceDay).isLessThan(150);
        int lactations = 4000;
        double yy = 0, pp = 0, yp = 0;
        for (int cow = 0; cow < lactations; cow++) {
            double lasting = random.nextGaussian();
            double yield = 0;
            double persistency = 0;
            for (int day = 1; day <= 305; day++) {
                double departure = sd[day - 1] * (Math.sqrt(0.8) * lasting + Math.sqrt(0.2) * random.nextGaussian());
                yield += departure;
                persistency += (day - balanceDay) * departure;
                lasting = 0.995 * lasting + Math.sqrt(1 - 0.995 * 0.995) * random.nextGaussian();
            }
            yy += yield * yield;
            pp += persistency * persistency;
            yp += yield * persistency;
        }
        assertThat(yp / Math.sqrt(yy * pp)).as("seed %d", seed).isCloseTo(0, within(4 / Math.sqrt(lactations)));
    }

    private static Persistency of(double... daysAndKg) {
        Lactation lactation = WorkedCow.withTests(daysAndKg);
        return new BestPredictionPersistency().of(lactation, STANDARD, WorkedCow.lastDate(lactation));
    }
}
