package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;

class IntervalCalibrationLawTest {
    private static final long SEED = 2718;

    // factor sqrt(mean(error^2 / SEP^2)), counted against 50 lactations for a factor of 1; by hand: ten errors of 2
    // standard errors
    // give (10 x 2 + 50) / 60
    @Test
    void fewLactationsMoveTheFactorLittle() {
        List<ProjectionError> errors = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            errors.add(new ProjectionError(3, 7000, 500, 7000 + (i % 2 == 0 ? 1000 : -1000)));
        }
        IntervalCalibration learned = IntervalCalibration.learn(errors);
        assertThat(learned.factor(3)).isCloseTo(70.0 / 60, within(1e-12));
        assertThat(learned.factor(2)).isEqualTo(1);
        // before a hundred lactations the shape of the errors is that of the open data
        assertThat(learned.low(3, Coverage.NINETY_FIVE_PERCENT))
                .isCloseTo(
                        70.0 / 60 * IntervalCalibration.OPEN_DATA.low(3, Coverage.NINETY_FIVE_PERCENT), within(1e-12));
        assertThat(IntervalCalibration.learn(List.of()).high(0, Coverage.NINETY_FIVE_PERCENT))
                .isEqualTo(IntervalCalibration.OPEN_DATA.high(0, Coverage.NINETY_FIVE_PERCENT));
        assertThat(learned.high(3, Coverage.EIGHTY_PERCENT))
                .isCloseTo(70.0 / 60 * IntervalCalibration.OPEN_DATA.high(3, Coverage.EIGHTY_PERCENT), within(1e-12));
    }

    // Student's t, quantiles .90 and .975 and variance by degrees of freedom from any table: 10: 1.372, 2.228, 10 / 8;
    // 8: 1.397, 2.306,
    // 8 / 6. 1.13 is ours; between 5 and 8 tests on a straight line
    @ParameterizedTest
    @CsvSource({"0, 0", "5, 0", "6, 0.33333", "7, 0.66667", "8, 1", "14, 1"})
    void shippedEndsAreThoseOfStudentsTWiderWithFewTests(int tests, double many) {
        double few80 = 1.13 * Math.sqrt(8 / 10.0) * 1.372;
        double few95 = 1.13 * Math.sqrt(8 / 10.0) * 2.228;
        double many80 = Math.sqrt(6 / 8.0) * 1.397;
        double many95 = Math.sqrt(6 / 8.0) * 2.306;
        IntervalCalibration shipped = IntervalCalibration.OPEN_DATA;
        assertThat(shipped.high(tests, Coverage.EIGHTY_PERCENT))
                .isCloseTo(few80 + many * (many80 - few80), within(0.001))
                .isEqualTo(-shipped.low(tests, Coverage.EIGHTY_PERCENT));
        assertThat(shipped.high(tests, Coverage.NINETY_FIVE_PERCENT))
                .isCloseTo(few95 + many * (many95 - few95), within(0.001))
                .isEqualTo(-shipped.low(tests, Coverage.NINETY_FIVE_PERCENT));
    }

    // an error's quantile from 110 lactations is off by .16 standard errors: it must not make the width jump from test
    // to test
    @Test
    void aHundredLactationsMoveTheEndsLittleFromOneNumberOfTestsToTheNext() {
        Random random = new Random(SEED);
        List<ProjectionError> errors = new ArrayList<>();
        for (int tests = 0; tests <= 5; tests++) {
            for (int i = 0; i < 110; i++) {
                errors.add(new ProjectionError(tests, 7000, 600, 7000 + 600 * random.nextGaussian()));
            }
        }
        IntervalCalibration learned = IntervalCalibration.learn(errors);
        for (Coverage coverage : Coverage.values()) {
            for (int tests = 1; tests <= 5; tests++) {
                assertThat(learned.high(tests, coverage) / learned.high(tests - 1, coverage))
                        .as("seed %d, %d tests", SEED, tests)
                        .isCloseTo(1, within(0.06));
            }
        }
    }

    // after 3 tests |z| is 2, after 4 it is 1: (4 + 1 / 2) / 1.5 = 3 and (4 / 2 + 1) / 1.5 = 2 are the mean squares, 50
    // lactations each against 50 for 1
    @Test
    void neighbouringNumbersOfTestsTellOfEachOther() {
        List<ProjectionError> errors = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            errors.add(new ProjectionError(3, 7000, 500, 8000));
            errors.add(new ProjectionError(4, 7000, 500, 6500));
        }
        IntervalCalibration learned = IntervalCalibration.learn(errors);
        assertThat(learned.factor(3)).isCloseTo((Math.sqrt(3) + 1) / 2, within(1e-12));
        assertThat(learned.factor(4)).isCloseTo((Math.sqrt(2) + 1) / 2, within(1e-12));
    }

    // 50 lactations with |z| = .5 against 200: (50 x .5 + 200) / 250
    @Test
    void narrowingNeedsMoreLactationsThanWidening() {
        List<ProjectionError> errors = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            errors.add(new ProjectionError(3, 7000, 500, 7250));
        }
        assertThat(IntervalCalibration.learn(errors).factor(3)).isCloseTo(0.9, within(1e-12));
    }

    @Test
    void manyLactationsGiveTheEndsOfTheirOwnErrors() {
        Random random = new Random(SEED);
        List<ProjectionError> learnedFrom = new ArrayList<>();
        List<ProjectionError> later = new ArrayList<>();
        for (int i = 0; i < 8000; i++) {
            // skewed: cows fall short further than they excel
            double squares = 0;
            for (int k = 0; k < 4; k++) {
                squares += Math.pow(random.nextGaussian(), 2);
            }
            double z = 1.5 * (1 - squares / 4);
            (i % 2 == 0 ? learnedFrom : later).add(new ProjectionError(1, 7000, 600, 7000 + 600 * z));
        }
        IntervalCalibration learned = IntervalCalibration.learn(learnedFrom);
        ProjectionAccuracy.Row row =
                ProjectionAccuracy.of(later, learned).rows().get(0);
        assertThat(row.coverage80Share()).as("seed %d", SEED).isCloseTo(0.80, within(0.025));
        assertThat(row.coverage95Share()).as("seed %d", SEED).isCloseTo(0.95, within(0.015));
        assertThat(-learned.low(1, Coverage.NINETY_FIVE_PERCENT))
                .isGreaterThan(1.6 * learned.high(1, Coverage.NINETY_FIVE_PERCENT));
    }

    // worked by hand: truths 10, 20, 30, projections 12, 19, 33, standard error 2
    @Test
    void accuracyOfThreeProjections() {
        List<ProjectionError> errors = List.of(
                new ProjectionError(2, 12, 2, 10),
                new ProjectionError(2, 19, 2, 20),
                new ProjectionError(2, 33, 2, 30));
        ProjectionAccuracy.Row row =
                ProjectionAccuracy.of(errors, IntervalCalibration.NONE).rows().get(0);
        assertThat(row.tests()).isEqualTo(2);
        assertThat(row.lactations()).isEqualTo(3);
        assertThat(row.biasKg()).isCloseTo(4 / 3.0, within(1e-12));
        assertThat(row.meanAbsoluteErrorKg()).isCloseTo(2, within(1e-12));
        assertThat(row.rootMeanSquareErrorKg()).isCloseTo(Math.sqrt(14 / 3.0), within(1e-12));
        // errors 2, -1, 3 about their mean: (4 + 49 + 25) / 9 over 2
        assertThat(row.errorSdKg()).isCloseTo(Math.sqrt(78 / 18.0), within(1e-12));
        // products of deviations 210, squares 200 and 686 / 3
        assertThat(row.correlation()).isCloseTo(210 / Math.sqrt(200 * 686 / 3.0), within(1e-12));
        // |z| is 1, .5 and 1.5
        assertThat(row.coverage80Share()).isCloseTo(2 / 3.0, within(1e-12));
        assertThat(row.coverage95Share()).isEqualTo(1);
        assertThat(row.errorRatio()).isCloseTo(Math.sqrt(14 / 12.0), within(1e-12));
    }

    @Test
    void impossibleValuesAreRefused() {
        assertThatThrownBy(() -> IntervalCalibration.ofFactors(1, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new ProjectionError(1, 7000, 0, 7000)).hasMessageContaining("standardErrorKg (0.0)");
    }

    // On lactations drawn from the model, the error against what all tests tell later has the variance SEP^2 -
    // SEP_all^2, so the ratio is 1.
    @Test
    void pastProjectionsOfATrueModelAreNeitherTooSureNorTooUnsure() {
        LactationStandard reference = LactationStandards.refinedForCow("HOL", 1, LactationTrait.MILK);
        double[] mean = new double[306];
        for (int day = 1; day <= 305; day++) {
            mean[day] = reference.meanKg(day);
        }
        SimulatedHerd simulated = new SimulatedHerd(SEED, reference.spread(), mean);
        List<HerdLactation> history = new ArrayList<>();
        for (int cow = 0; cow < 400; cow++) {
            history.add(new HerdLactation(
                    "cow " + cow, "HOL", SimulatedHerd.monthly(1, simulated.dailyKg(), 5 + cow % 30, 10)));
        }
        HerdStandards standards = HerdStandards.learn(history, SimulatedHerd.LATER);
        List<ProjectionError> errors = PastProjections.of(history, standards, SimulatedHerd.LATER);
        ProjectionAccuracy accuracy = ProjectionAccuracy.of(errors, IntervalCalibration.NONE);
        assertThat(accuracy.rows()).hasSize(10);
        for (ProjectionAccuracy.Row row : accuracy.rows()) {
            assertThat(row.lactations()).isEqualTo(400);
            // four standard errors of a variance ratio from 400 lactations
            assertThat(row.errorRatio())
                    .as("seed %d, %d tests", SEED, row.tests())
                    .isCloseTo(1, within(4 / Math.sqrt(800)));
            assertThat(row.coverage80Share()).isCloseTo(0.80, within(4 * 0.02));
        }
    }
}
