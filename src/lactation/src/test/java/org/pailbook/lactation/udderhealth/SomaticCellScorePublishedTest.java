package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.testday.TestDay;

class SomaticCellScorePublishedTest {
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);

    // USDA: SCC = 100 x 2^(SCS - 3); the powers of two stand in the extension table of midpoints, the others are log2
    // by hand
    @ParameterizedTest
    @CsvSource({
        "12.5, 0",
        "25, 1",
        "50, 2",
        "100, 3",
        "200, 4",
        "400, 5",
        "800, 6",
        "1600, 7",
        "3200, 8",
        "6400, 9",
        "250, 4.321928",
        "87, 2.799087",
        "1, -3.643856",
        "283, 4.500802"
    })
    void scoreOfACount(double sccThousandPerMl, double score) {
        assertThat(SomaticCellScore.score(sccThousandPerMl)).isCloseTo(score, within(5e-7));
    }

    @Test
    void meanOfThreeTestsIsTheGeometricMeanOfTheirCounts() {
        // (2 + 5 + 3) / 3 = 3.333333, which is 126.0; the plain mean of the counts, 183.3, is another thing
        List<TestDay> tests = List.of(
                TestDay.ofMilk(DAY, 30).withSccThousandPerMl(50),
                TestDay.ofMilk(DAY.plusDays(30), 28).withSccThousandPerMl(400),
                TestDay.ofMilk(DAY.plusDays(60), 26).withSccThousandPerMl(100));
        Figure mean = SomaticCellScore.SCS.meanOf(tests, DAY.plusDays(60));
        assertThat(mean.orThrow()).isCloseTo(3.333333, within(5e-7));
        assertThat(SomaticCellScore.sccThousandPerMl(mean.orThrow())).isCloseTo(126.0, within(0.05));
        assertThat(mean.explanation().total()).isEqualTo(mean.orThrow());
    }
}
