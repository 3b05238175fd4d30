package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.TestDay;

class SomaticCellScoreLawTest {
    private static final long SEED = 5;
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);

    @Test
    void scoreAndCountAreInverse() {
        Random random = new Random(SEED);
        for (int i = 0; i < 1000; i++) {
            double scc = Math.exp(10 * random.nextDouble());
            assertThat(SomaticCellScore.sccThousandPerMl(SomaticCellScore.score(scc)))
                    .as("seed " + SEED)
                    .isCloseTo(scc, within(scc * 1e-12));
        }
    }

    @Test
    void doublingTheCountAddsOne() {
        Random random = new Random(SEED);
        for (int i = 0; i < 1000; i++) {
            double scc = Math.exp(10 * random.nextDouble());
            assertThat(SomaticCellScore.score(2 * scc) - SomaticCellScore.score(scc))
                    .as("seed " + SEED)
                    .isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void theScoreNamesItsSource() {
        assertThat(SomaticCellScore.SCS.id()).isEqualTo("scs-usda");
        assertThat(SomaticCellScore.SCS.version()).isEqualTo(1);
        assertThat(SomaticCellScore.SCS.citation().text()).contains("100 x 2^(SCS - 3)");
    }

    @Test
    void aCountOfZeroHasNoScoreAndSaysSo() {
        Figure figure = SomaticCellScore.SCS.ofTestDay(TestDay.ofMilk(DAY, 20).withSccThousandPerMl(0), DAY);
        assertThat(figure.value()).isEmpty();
        assertThat(figure.findings()).extracting(Finding::code).containsExactly(FindingCode.SCC_ZERO);
        assertThatThrownBy(() -> SomaticCellScore.score(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SomaticCellScore.score(Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aCountNotTakenOrBelowZeroHasNoScoreAndOneBelowDetectionIsDoubted() {
        Figure missing = SomaticCellScore.SCS.ofTestDay(TestDay.ofMilk(DAY, 20), DAY);
        Figure negative = SomaticCellScore.SCS.ofTestDay(TestDay.ofMilk(DAY, 20).withSccThousandPerMl(-4), DAY);
        Figure tiny = SomaticCellScore.SCS.ofTestDay(TestDay.ofMilk(DAY, 20).withSccThousandPerMl(0.5), DAY);
        Figure one = SomaticCellScore.SCS.ofTestDay(TestDay.ofMilk(DAY, 20).withSccThousandPerMl(1), DAY);
        assertThat(missing.findings()).extracting(Finding::code).containsExactly(FindingCode.SCC_NEEDED);
        assertThat(negative.findings()).extracting(Finding::code).containsExactly(FindingCode.VALUE_IMPOSSIBLE);
        assertThat(tiny.findings()).extracting(Finding::code).containsExactly(FindingCode.SCC_BELOW_DETECTION);
        assertThat(tiny.value()).isPresent();
        assertThat(one.findings()).isEmpty();
        assertThat(one.explanation().total()).isEqualTo(one.orThrow());
    }

    @Test
    void theMeanLeavesOutTestsWithoutAScoreAndNamesThem() {
        List<TestDay> tests = List.of(
                TestDay.ofMilk(DAY, 30).withSccThousandPerMl(200),
                TestDay.ofMilk(DAY.plusDays(30), 28),
                TestDay.ofMilk(DAY.plusDays(60), 28).withSccThousandPerMl(0),
                TestDay.ofMilk(DAY.plusDays(90), 28).withSccThousandPerMl(0.5));
        Figure mean = SomaticCellScore.SCS.meanOf(tests, DAY.plusDays(90));
        double expected = (4 + SomaticCellScore.score(0.5)) / 2;
        assertThat(mean.orThrow()).isCloseTo(expected, within(1e-12));
        assertThat(mean.inputs()).extracting(UsedInput::isUsed).containsExactly(true, false, false, true);
        assertThat(mean.findings()).extracting(Finding::code).containsExactly(FindingCode.SCC_BELOW_DETECTION);
        assertThat(SomaticCellScore.SCS.meanOf(tests.subList(1, 3), DAY).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.SCC_NEEDED);
    }
}
