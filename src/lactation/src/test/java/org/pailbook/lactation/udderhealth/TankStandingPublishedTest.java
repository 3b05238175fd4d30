package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.udderhealth.TankStanding.Standing;

class TankStandingPublishedTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 15);

    private static List<TankSample> monthly(double... counts) {
        List<TankSample> samples = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            samples.add(new TankSample(FIRST.plusMonths(i), counts[i]));
        }
        return samples;
    }

    private static TankStanding stand(String limit, double... counts) {
        return TankStanding.of(
                TankLimits.byId(limit).orElseThrow(), monthly(counts), FIRST.plusMonths(counts.length - 1L));
    }

    @Test
    void threeMonthsAreJudgedByTheirGeometricMean() {
        // check V22, rule of Regulation (EC) 853/2004 (quoted text read): 350, 420, 460 -> 407.403781, above 400
        // R 4.2.2: exp(mean(log(c(350, 420, 460)))) is 407.403781215
        TankStanding above = stand("eu-853-2004", 350, 420, 460);
        assertThat(above.value().orElseThrow()).isCloseTo(407.403781, within(1e-6));
        assertThat(above.standing()).isEqualTo(Standing.ABOVE);
        assertThat(above.words()).contains("Ask your buyer or authority").contains("limit 400");
        // derived beside it: 380, 430, 395 -> 401.128
        assertThat(stand("eu-853-2004", 380, 430, 395).value().orElseThrow()).isCloseTo(401.128, within(5e-4));
    }

    @Test
    void threeOfFiveCountsAboveMeetTheGradeARule() {
        // check V23, Norman and Wright 2013 (abstract read): 760, 700, 800, 600, 751
        assertThat(stand("us-pmo-grade-a", 760, 700, 800, 600, 751).standing()).isEqualTo(Standing.ABOVE);
        assertThat(stand("us-pmo-grade-a", 760, 700, 800, 600, 750).standing()).isEqualTo(Standing.NEAR);
        assertThat(stand("us-pmo-grade-a", 760, 700, 800, 600, 500).standing()).isEqualTo(Standing.BELOW);
    }

    @Test
    void fourMeansOfThreeInARowAreNeededForTheExportRule() {
        assertThat(stand("eu-export-us-studies", 450, 450, 450, 450, 450).standing())
                .isEqualTo(Standing.TOO_FEW_SAMPLES);
        assertThat(stand("eu-export-us-studies", 450, 450, 450, 450, 450, 450).standing())
                .isEqualTo(Standing.ABOVE);
        assertThat(stand("eu-export-us-studies", 100, 450, 450, 450, 450, 450).standing())
                .isEqualTo(Standing.NEAR);
    }

    @Test
    void fewerMonthsAreTooFewToJudgeAndNeverBelow() {
        TankStanding two = stand("eu-853-2004", 100, 100);
        assertThat(two.standing()).isEqualTo(Standing.TOO_FEW_SAMPLES);
        assertThat(two.value()).isEmpty();
        TankLimit limit = TankLimits.byId("eu-853-2004").orElseThrow();
        List<TankSample> gap = List.of(
                new TankSample(FIRST, 100),
                new TankSample(FIRST.minusDays(3), 100),
                new TankSample(FIRST.plusMonths(2), 100));
        assertThat(TankStanding.of(limit, gap, FIRST.plusMonths(2)).standing()).isEqualTo(Standing.TOO_FEW_SAMPLES);
        for (TankLimit one : TankLimits.all()) {
            assertThat(TankStanding.of(one, List.of(), FIRST).standing())
                    .as(one.id())
                    .isEqualTo(Standing.TOO_FEW_SAMPLES);
        }
    }

    @Test
    void aSampleSentTwiceOrTakenLaterChangesNothing() {
        TankLimit limit = TankLimits.byId("eu-853-2004").orElseThrow();
        List<TankSample> samples = new ArrayList<>(monthly(350, 420, 460));
        TankStanding once = TankStanding.of(limit, samples, FIRST.plusMonths(2));
        samples.addAll(monthly(350, 420, 460));
        samples.add(new TankSample(FIRST.plusMonths(3), 2000));
        assertThat(TankStanding.of(limit, samples, FIRST.plusMonths(2))).isEqualTo(once);
    }

    @Test
    void higherCountsNeverStandBetter() {
        for (TankLimit limit : TankLimits.all()) {
            int before = -1;
            for (double count = 50; count < 1500; count += 10) {
                Standing now = stand(limit.id(), count, count, count, count, count, count)
                        .standing();
                assertThat(now.ordinal()).as(limit.id() + " at " + count).isGreaterThanOrEqualTo(before);
                before = now.ordinal();
            }
        }
    }

    @Test
    void everyLimitSaysWhereItWasRead() {
        assertThat(TankLimits.all()).hasSizeGreaterThan(6).allSatisfy(limit -> {
            assertThat(limit.source()).containsAnyOf("read", "from memory");
            assertThat(limit.limitThousandPerMl()).isBetween(200.0, 800.0);
        });
        assertThat(TankLimits.all()).extracting(TankLimit::id).doesNotHaveDuplicates();
    }
}
