package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.internal.SparseRows;

class CowValueLawTest {
    private static final double ROUNDING = 1e-6;
    private static final long SEED = 1985;
    private static final CowValueTable TABLE = CowValueTable.solve(CullingPrices.REFERENCE, HerdParameters.REFERENCE);

    private static CowValueTable with(CullingPrices prices) {
        return CowValueTable.solve(prices, HerdParameters.REFERENCE);
    }

    @Test
    void dearerHeifersNeverLowerWhatKeepingACowIsWorth() {
        CowValueTable before = with(CullingPrices.REFERENCE.withHeiferCu(800));
        for (double heifer = 1000; heifer <= 3000; heifer += 400) {
            CowValueTable dearer = with(CullingPrices.REFERENCE.withHeiferCu(heifer));
            for (CowStage stage : CowValueTable.stages()) {
                if (!stage.mustGo()) {
                    assertThat(dearer.retentionPayoffCu(stage).orElseThrow())
                            .as("heifer %s, %s", heifer, stage)
                            .isGreaterThanOrEqualTo(
                                    before.retentionPayoffCu(stage).orElseThrow() - ROUNDING);
                }
            }
            before = dearer;
        }
    }

    @Test
    void aBetterMilkPriceNeverLowersTheValueOfAnySlot() {
        CowValueTable better = with(CullingPrices.REFERENCE.withMilkCuPerKg(0.50));
        CowValueTable best = with(CullingPrices.REFERENCE.withMilkCuPerKg(0.60));
        for (CowStage stage : CowValueTable.stages()) {
            assertThat(better.valueCu(stage)).as("%s", stage).isGreaterThan(TABLE.valueCu(stage));
            assertThat(best.valueCu(stage)).as("%s", stage).isGreaterThan(better.valueCu(stage));
        }
    }

    // Holds for the reference prices, not always: an old cow of the low class due to be sold gains nothing from a calf
    // to come
    @Test
    void aPregnantCowIsNeverWorthLessThanTheSameCowOpen() {
        long gains = CowValueTable.stages().stream()
                .filter(stage -> stage.monthsPregnant() > 0)
                .mapToDouble(stage -> TABLE.pregnancyValueCu(stage).orElseThrow())
                .peek(value -> assertThat(value).isGreaterThanOrEqualTo(-ROUNDING))
                .filter(value -> value > 1)
                .count();
        assertThat(gains).isGreaterThan(1000);
    }

    @Test
    void everyChanceAddsUpToOne() {
        SparseRows keep = TABLE.process().leads(CowValueProcess.KEEP);
        double discount = CullingPrices.REFERENCE.monthlyDiscountFactor();
        for (int state = 0; state < 1665; state++) {
            double sum = 0;
            for (int n = 0; n < keep.count(state); n++) {
                assertThat(keep.amount(state, n)).isPositive();
                sum += keep.amount(state, n) / discount;
            }
            assertThat(sum)
                    .as("%s", StageGrid.ALL.get(state))
                    .isCloseTo(StageGrid.ALL.get(state).mustGo() ? 0 : 1, within(1e-12));
        }
    }

    @Test
    void theBestPolicyIsWorthMoreThanAnyOtherInEveryStage() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 20; trial++) {
            CowValueTable other = CowValueTable.underPolicy(
                    CullingPrices.REFERENCE,
                    HerdParameters.REFERENCE,
                    stage -> stage.monthInMilk() > 2 && random.nextInt(10) == 0);
            for (CowStage stage : CowValueTable.stages()) {
                assertThat(other.valueCu(stage))
                        .as("seed %d, trial %d, %s", SEED, trial, stage)
                        .isLessThan(TABLE.valueCu(stage) + ROUNDING);
            }
        }
    }

    @Test
    void theBestPolicyFollowedByTheFarmGivesTheSameTable() {
        CowValueTable same = CowValueTable.underPolicy(
                CullingPrices.REFERENCE, HerdParameters.REFERENCE, stage -> !TABLE.isKept(stage));
        for (CowStage stage : CowValueTable.stages()) {
            assertThat(same.valueCu(stage)).isCloseTo(TABLE.valueCu(stage), within(ROUNDING));
        }
        assertThat(same.steadyState().milkKgPerSlotYear())
                .isCloseTo(TABLE.steadyState().milkKgPerSlotYear(), within(ROUNDING));
    }

    @Test
    void noHealthBurdenLeavesTheTableAsItIsAndABurdenNeverHelps() {
        CowValueTable none = CowValueTable.withBurden(TABLE, HealthBurden.NONE);
        CowValueTable ill = CowValueTable.withBurden(TABLE, new HealthBurden(30, 2));
        for (CowStage stage : CowValueTable.stages()) {
            assertThat(none.valueCu(stage)).as("%s", stage).isCloseTo(TABLE.valueCu(stage), within(ROUNDING));
            assertThat(ill.valueCu(stage)).as("%s", stage).isLessThan(TABLE.valueCu(stage) + ROUNDING);
            assertThat(ill.replaceValueCu(stage)).isEqualTo(TABLE.replaceValueCu(stage));
        }
    }

    @Test
    void aHerdThatSellsItsPoorHeifersAtOnceStillHasALongRun() {
        CowValueTable table = CowValueTable.underPolicy(
                CullingPrices.REFERENCE,
                HerdParameters.REFERENCE,
                stage -> stage.parity() == 1 && stage.monthInMilk() == 1 && stage.milkClass() == 1);
        SteadyState herd = table.steadyState();
        SteadyState keepsAll = CowValueTable.underPolicy(
                        CullingPrices.REFERENCE, HerdParameters.REFERENCE, stage -> false)
                .steadyState();
        assertThat(herd.milkKgPerSlotYear()).isGreaterThan(keepsAll.milkKgPerSlotYear());
        assertThat(herd.chosenExitsPerSlotYear()).isGreaterThan(keepsAll.chosenExitsPerSlotYear());
    }

    @Test
    void aHeiferThatSellsForMoreThanSheCostsHasNoValue() {
        CullingPrices contradictory = CullingPrices.REFERENCE.withHeiferCu(700);
        assertThat(CowValueTable.hasValue(contradictory, HerdParameters.REFERENCE))
                .isFalse();
        assertThatThrownBy(() -> with(contradictory))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("heiferCu (700.0)");
    }

    @Test
    void aHerdsOwnFiguresAreBelievedByHowManyThereAre() {
        ParityGroup reference = HerdParameters.REFERENCE.group(2);
        assertThat(HerdExperience.NONE.appliedTo(reference, 2)).isEqualTo(reference);
        MilkByMonth own = MilkByMonth.ofCurve(day -> 20);
        ParityGroup half = new HerdExperience(3, 0, 60, 30, 60, Optional.of(own), 60).appliedTo(reference, 2);
        // 60 of each count one half: (0.011 + 3/60) / 2, (0.20 + 30/60) / 2, (reference + 20) / 2
        assertThat(half.unplannedExitSharePerMonth()).isCloseTo(0.0305, within(1e-12));
        assertThat(half.pregnancyRate21DayShare()).isCloseTo(0.35, within(1e-12));
        IntStream.rangeClosed(1, 21)
                .forEach(month -> assertThat(half.milk().kgPerDay(month))
                        .isCloseTo((reference.milk().kgPerDay(month) + 20) / 2, within(1e-12)));
        // 12 exits in 60 fresh and 60 later months at twice the risk when fresh: 12 / 180, believed 120 / 180
        assertThat(new HerdExperience(12, 60, 60, 0, 0, Optional.empty(), 0)
                        .appliedTo(reference, 2)
                        .unplannedExitSharePerMonth())
                .isCloseTo(0.011 / 3 + 2 * 12.0 / 180 / 3, within(1e-12));
    }

    @Test
    void openAtTheEndOfTheTableThereIsNoKeeping() {
        assertThat(TABLE.keepValueCu(new CowStage(2, 21, 0, 2))).isEqualTo(OptionalDouble.empty());
        assertThat(TABLE.retentionPayoffCu(new CowStage(2, 21, 0, 2))).isEmpty();
    }
}
