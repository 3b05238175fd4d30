package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CullingRulesPublishedTest {
    private static final double MONEY = 1e-6;
    private static final LocalDate CALVED = LocalDate.of(2025, 1, 1);
    private static final KeepOrReplace REFERENCE =
            KeepOrReplace.with(CullingPrices.REFERENCE, HerdParameters.REFERENCE, List.of());

    /** A day in the middle of a month in milk. */
    private static LocalDate inMonth(int month) {
        return CALVED.plusDays(Math.round((month - 0.5) * 30.4375));
    }

    private static CowOutlook outlook(int parity, int month, PregnancyState pregnancy, double level) {
        return REFERENCE.of(
                CullingCow.of("A", parity, CALVED, pregnancy, new MilkLevel(level, OptionalDouble.empty(), 5)),
                inMonth(month));
    }

    // Reference program: marginal net revenue 10.885009, a month of the slot 82.801965, difference the retention
    // pay-off
    @Test
    void oneMonthAheadIsTheRetentionPayoffWhereEveryNextStageIsReplaced() {
        CowStage stage = new CowStage(3, 13, 0, 2);
        double month = MarginalNetRevenue.ONE_MONTH
                .ofOpenCow(REFERENCE.table(), 3, 13, 1.0, inMonth(13))
                .orThrow();
        assertThat(month).isCloseTo(10.885009, within(MONEY));
        assertThat(month - REFERENCE.table().slotCuPerMonth()).isCloseTo(-71.916955, within(MONEY));
        assertThat(REFERENCE.table().retentionPayoffCu(stage).orElseThrow()).isCloseTo(-71.916955, within(MONEY));
    }

    // Virginia extension 2003: milk at US$ 13.14 per 100 lb, 50 lb bring 6.57, feed 2.39, left 4.18. Here lb and US$
    // stand for kg and cu
    @Test
    void fiftyPoundsOverTheirFeed() {
        assertThat(IncomeOverFeedCost.PER_DAY.of(50, 0.1314, 2.39, CALVED).orThrow())
                .isCloseTo(4.18, within(0.005));
        assertThat(IncomeOverFeedCost.PER_DAY.of(-1, 0.1314, 2.39, CALVED).value())
                .isEmpty();
    }

    // Bayes: 0.40 / (0.40 + 0.60 x 0.40)
    @Test
    void noReturnSeenAfterACycleMakesFortyPercentSixtyTwoAndAHalf() {
        PregnancyState inseminated = PregnancyState.inseminatedOn(CALVED.plusDays(80));
        assertThat(inseminated.pregnantShare(CALVED.plusDays(100))).isEqualTo(0.40);
        assertThat(inseminated.pregnantShare(CALVED.plusDays(101))).isEqualTo(0.625);
    }

    // Reference program, rows of its table
    @ParameterizedTest
    @CsvSource({
        "1, 8, 0, 1.00, 306.889904, ",
        "2, 5, 0, 1.00, 537.192642, ",
        "2, 5, 1, 1.00, 826.329656, 289.137014",
        "2, 8, 4, 1.00, 701.869624, 554.913233",
        "3, 10, 3, 0.85, 97.416791, 97.416791",
        "5, 12, 9, 1.00, 712.656290, 712.656290",
        "7, 12, 9, 1.00, 712.656290, 712.656290",
        "1, 12, 0, 0.85, -43.786677, "
    })
    void aCowOnAStageOfTheTableIsWorthWhatTheTableSays(
            int parity, int month, int pregnant, double level, double payoff, Double pregnancy) {
        PregnancyState state = pregnant == 0 ? PregnancyState.OPEN : PregnancyState.pregnantForMonths(pregnant);
        CowOutlook outlook = outlook(parity, month, state, level);
        assertThat(outlook.retentionPayoff().orThrow()).isCloseTo(payoff, within(MONEY));
        if (pregnancy != null) {
            assertThat(outlook.pregnancyValue().orElseThrow().orThrow()).isCloseTo(pregnancy, within(MONEY));
        }
    }

    // Months are floor(days / 30.4375) + 1: calved day 0, conceived day 106 (month 4), day 228 is month 8: 4 months
    // pregnant
    @Test
    void monthsPregnantAreCountedFromTheMonthOfConception() {
        CowOutlook outlook = outlook(2, 8, PregnancyState.pregnantSince(CALVED.plusDays(106)), 1);
        assertThat(outlook.retentionPayoff().orThrow()).isCloseTo(701.869624, within(MONEY));
        // conceived this month: counts as one month pregnant
        assertThat(outlook(2, 5, PregnancyState.pregnantSince(inMonth(5)), 1)
                        .retentionPayoff()
                        .orThrow())
                .isCloseTo(826.329656, within(MONEY));
    }

    // 0.625 x pregnant + 0.375 x open; three quarters of the way from class 1 to class 2 for level 0.9625
    @Test
    void aCowInseminatedOrBetweenTwoClassesLiesBetween() {
        CowValueTable table = REFERENCE.table();
        double open = table.retentionPayoffCu(new CowStage(2, 5, 0, 2)).orElseThrow();
        double pregnant = table.retentionPayoffCu(new CowStage(2, 5, 1, 2)).orElseThrow();
        CowOutlook inseminated =
                outlook(2, 5, PregnancyState.inseminatedOn(inMonth(5).minusDays(25)), 1);
        assertThat(inseminated.retentionPayoff().orThrow()).isCloseTo(0.625 * pregnant + 0.375 * open, within(1e-9));
        double low = table.retentionPayoffCu(new CowStage(2, 5, 0, 1)).orElseThrow();
        assertThat(outlook(2, 5, PregnancyState.OPEN, 0.9625).retentionPayoff().orThrow())
                .isCloseTo(0.25 * low + 0.75 * open, within(1e-9));
        assertThat(outlook(2, 5, PregnancyState.OPEN, 0.3).retentionPayoff().orThrow())
                .isCloseTo(low, within(1e-9));
    }
}
