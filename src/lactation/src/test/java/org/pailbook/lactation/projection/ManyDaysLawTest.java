package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/** A meter weighs every day: fat and protein by means of weeks, against the equations of all days. */
class ManyDaysLawTest {
    private static final long SEED = 300;
    private static final TraitStandards STANDARDS = LactationStandards.refinedTraitsForCow("HOL", 2);

    private static Lactation weighedDaily(int days, long seed) {
        Random random = new Random(seed);
        double[] mean = new double[306];
        for (int day = 1; day <= 305; day++) {
            mean[day] = STANDARDS.first().meanKg(day);
        }
        double[] kg = new SimulatedHerd(seed, STANDARDS.first().spread(), mean).dailyKg();
        List<TestDay> tests = new ArrayList<>();
        for (int day = 5; day < 5 + days; day++) {
            TestDay test = TestDay.ofMilk(WorkedCow.CALVING.plusDays(day), Math.max(3, kg[day]));
            // a sample is missing here and there
            tests.add(
                    random.nextInt(10) == 0
                            ? test
                            : test.withFatPct(4 + 0.4 * random.nextGaussian())
                                    .withProteinPct(3.4 + 0.2 * random.nextGaussian()));
        }
        return Lactation.inMilk(2, WorkedCow.CALVING, tests);
    }

    // 1 in 1,000 of the total, as is stated; the reliability to 1 in 100
    @Test
    void meansOfWeeksGiveTheFiguresOfAllDays() {
        for (int days : new int[] {TestRecords.MOST_SINGLE_TESTS + 1, 120, 300}) {
            for (int cow = 0; cow < 3; cow++) {
                Lactation lactation = weighedDaily(days, SEED + cow);
                Projection305 projection = new BestPrediction().project(lactation, STANDARDS, SimulatedHerd.LATER);
                UsableTests usable = UsableTests.of(lactation, SimulatedHerd.LATER);
                TestDayWeights allDays = new TestDayWeights(
                        STANDARDS,
                        TestRecords.of(
                                usable, STANDARDS.traits(), STANDARDS.first().lastDay(), test -> 0));
                for (LactationTrait trait : List.of(LactationTrait.FAT, LactationTrait.PROTEIN)) {
                    TestDayWeights.Predicted exact =
                            allDays.total(STANDARDS.traits().indexOf(trait), 305);
                    assertThat(projection.toDay(trait, 305).orElseThrow().orThrow())
                            .as("seed %d, cow %d, %d days, %s", SEED, cow, days, trait)
                            .isCloseTo(exact.value(), within(0.001 * exact.value()));
                    assertThat(projection.reliabilityShare(trait).orElseThrow())
                            .isCloseTo(exact.reliability(), within(0.01));
                }
            }
        }
    }

    @Test
    void itIsSaidAndOnlyThen() {
        Projection305 many = new BestPrediction().project(weighedDaily(61, SEED), STANDARDS, SimulatedHerd.LATER);
        Projection305 few = new BestPrediction().project(weighedDaily(60, SEED), STANDARDS, SimulatedHerd.LATER);
        assertThat(many.fat305().orElseThrow().findings())
                .extracting(Finding::code)
                .contains(FindingCode.WEEKLY_MEANS);
        assertThat(many.milk305().findings()).extracting(Finding::code).doesNotContain(FindingCode.WEEKLY_MEANS);
        assertThat(few.fat305().orElseThrow().findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.WEEKLY_MEANS);
        // the parts still add up to the figure
        assertThat(many.fat305().orElseThrow().explanation().total())
                .isCloseTo(many.fat305().orElseThrow().orThrow(), within(1e-9));
    }
}
