package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Several curves on one lactation, side by side. */
class CurveComparisonLawTest {
    private static final LocalDate CALVING = LocalDate.of(2023, 10, 1);
    private static final LocalDate LATE = LocalDate.of(2025, 1, 1);
    private static final WoodCurve COW = new WoodCurve(16, 0.2, 0.004);

    private static Lactation lactation(int tests, long seed) {
        Random random = new Random(seed);
        List<TestDay> days = new ArrayList<>();
        for (int i = 0; i < tests; i++) {
            int day = 10 + 30 * i + random.nextInt(10);
            days.add(TestDay.ofMilk(CALVING.plusDays(day), COW.milkKgPerDay(day) + random.nextGaussian()));
        }
        return Lactation.inMilk(2, CALVING, days);
    }

    @Test
    void everyModelIsEitherFittedOrRefusedWithAReasonThatBlocks() {
        for (int tests = 0; tests <= 11; tests++) {
            CurveComparison comparison = CurveComparison.of(lactation(tests, 11), LATE);

            assertThat(comparison.fits().size() + comparison.refused().size())
                    .as("%d tests", tests)
                    .isEqualTo(LactationCurves.all().size());
            assertThat(comparison.refused())
                    .allMatch(fit -> fit.findings().stream().anyMatch(f -> f.severity() == Severity.BLOCKS));
            assertThat(comparison.fits())
                    .allMatch(fit -> fit.findings().stream().noneMatch(f -> f.severity() == Severity.BLOCKS));
        }
    }

    @Test
    void theSmallestCriterionComesFirstAndIsZeroAboveItself() {
        CurveComparison comparison = CurveComparison.of(lactation(10, 5), LATE);

        assertThat(comparison.fits()).hasSizeGreaterThan(8);
        assertThat(comparison.fits())
                .isSortedAccordingTo(
                        Comparator.comparingDouble(fit -> fit.aicc().orElse(Double.POSITIVE_INFINITY)));
        assertThat(comparison.aiccAboveBest(comparison.fits().get(0))).hasValue(0);
        assertThat(comparison.aiccAboveBest(comparison.fits().get(1)).orElseThrow())
                .isGreaterThanOrEqualTo(0);
    }

    @Test
    void withFiveTestsThreeParametersAreFittedButTheCorrectedCriterionHasNoRoom() {
        CurveComparison comparison =
                CurveComparison.of(List.of(LactationCurves.ALI_SCHAEFFER, LactationCurves.WOOD), lactation(5, 5), LATE);

        assertThat(comparison.fits()).extracting(CurveFit::model).containsExactly(LactationCurves.WOOD);
        assertThat(comparison.fits().get(0).aicc()).isEmpty();
        assertThat(comparison.aiccAboveBest(comparison.fits().get(0))).isEmpty();
        assertThat(comparison.refused()).extracting(CurveFit::model).containsExactly(LactationCurves.ALI_SCHAEFFER);
    }

    @Test
    void woodOnLogarithmsIsNeverAheadOfWoodOnKg() {
        for (long seed = 0; seed < 30; seed++) {
            CurveComparison comparison = CurveComparison.of(
                    List.of(LactationCurves.WOOD_LOG_LINEAR, LactationCurves.WOOD), lactation(9, seed), LATE);

            assertThat(comparison.fits())
                    .as("seed %d", seed)
                    .extracting(CurveFit::model)
                    .containsExactly(LactationCurves.WOOD, LactationCurves.WOOD_LOG_LINEAR);
        }
    }
}
