package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.breeding.BreedingHistory;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

class KeepOrReplaceLawTest {
    private static final long SEED = 2012;
    private static final double ROUNDING = 1e-6;
    private static final LocalDate AS_OF = LocalDate.of(2026, 1, 1);
    private static final KeepOrReplace REFERENCE =
            KeepOrReplace.with(CullingPrices.REFERENCE, HerdParameters.REFERENCE, List.of());

    private static CullingCow random(Random random, int number) {
        int daysInMilk = random.nextInt(700);
        LocalDate calved = AS_OF.minusDays(daysInMilk);
        LocalDate conceived = calved.plusDays(random.nextInt(daysInMilk + 1));
        PregnancyState pregnancy = switch (random.nextInt(4)) {
            case 0 -> PregnancyState.OPEN;
            case 1 -> PregnancyState.NOT_KNOWN;
            case 2 -> PregnancyState.inseminatedOn(conceived);
            default -> PregnancyState.pregnantSince(conceived);
        };
        MilkLevel milk = new MilkLevel(
                0.6 + 0.8 * random.nextDouble(), OptionalDouble.of(0.1 * random.nextDouble()), random.nextInt(8));
        CullingCow cow = CullingCow.of("cow " + number, 1 + random.nextInt(9), calved, pregnancy, milk);
        return random.nextInt(5) == 0 ? cow.notToBeBred() : cow;
    }

    @Test
    void partsAddUpAndTheRangeHoldsThePayoff() {
        Random random = new Random(SEED);
        for (int i = 0; i < 2000; i++) {
            CullingCow cow = random(random, i);
            CowOutlook outlook = REFERENCE.of(cow, AS_OF);
            double payoff = outlook.retentionPayoff().orThrow();
            assertThat(outlook.retentionPayoff().explanation().total())
                    .as("seed %d, %s", SEED, cow)
                    .isCloseTo(payoff, within(ROUNDING));
            PayoffRange range = outlook.range().orElseThrow();
            assertThat(payoff).isBetween(range.lowCu(), range.highCu());
            assertThat(range.shifts()).hasSize(6);
            assertThat(outlook.reasons()).hasSizeLessThanOrEqualTo(2);
            assertThat(outlook.caution()).contains("veterinarian", "meat withholding");
            if (Math.abs(payoff) < 100) {
                assertThat(outlook.suggestion()).contains(Suggestion.CLOSE_CALL);
            }
        }
    }

    @Test
    void thePregnancyValueAloneIsThatOfTheOutlookAndOfACowNotCheckedThatOfOnePregnantSinceThen() {
        Random random = new Random(SEED);
        int served = 0;
        int without = 0;
        for (int i = 0; i < 2000; i++) {
            CullingCow cow = random(random, i);
            Optional<Figure> alone = REFERENCE.pregnancyValue(cow, AS_OF);
            Optional<Figure> beside = REFERENCE.of(cow, AS_OF).pregnancyValue();
            assertThat(alone.map(Figure::orThrow)).as("seed %d, %s", SEED, cow).isEqualTo(beside.map(Figure::orThrow));
            assertThat(alone.map(Figure::explanation)).isEqualTo(beside.map(Figure::explanation));
            without += alone.isEmpty() ? 1 : 0;
            if (cow.pregnancy().kind() == PregnancyState.Kind.INSEMINATED) {
                served++;
                CullingCow pregnant = new CullingCow(
                        cow.cow(),
                        cow.parity(),
                        cow.calvingDate(),
                        PregnancyState.pregnantSince(cow.pregnancy().date().orElseThrow()),
                        cow.milk(),
                        cow.isToBeBred(),
                        cow.health());
                assertThat(alone.orElseThrow().orThrow())
                        .isEqualTo(REFERENCE
                                .pregnancyValue(pregnant, AS_OF)
                                .orElseThrow()
                                .orThrow());
                assertThat(alone.orElseThrow().explanation().parts().get(0).what())
                        .startsWith("if she took");
            }
        }
        assertThat(served).isGreaterThan(300);
        assertThat(without).isGreaterThan(300);
    }

    @Test
    void moreMilkAndDearerHeifersNeverSpeakAgainstKeeping() {
        Random random = new Random(SEED);
        KeepOrReplace dearer =
                KeepOrReplace.with(CullingPrices.REFERENCE.withHeiferCu(2100), HerdParameters.REFERENCE, List.of());
        for (int i = 0; i < 500; i++) {
            CullingCow cow = random(random, i);
            CullingCow better = new CullingCow(
                    cow.cow(),
                    cow.parity(),
                    cow.calvingDate(),
                    cow.pregnancy(),
                    new MilkLevel(cow.milk().ratio() + 0.05, OptionalDouble.empty(), 5),
                    cow.isToBeBred(),
                    cow.health());
            double payoff = REFERENCE.of(cow, AS_OF).retentionPayoff().orThrow();
            assertThat(REFERENCE.of(better, AS_OF).retentionPayoff().orThrow())
                    .as("seed %d, %s", SEED, cow)
                    .isGreaterThanOrEqualTo(payoff - ROUNDING);
            assertThat(dearer.of(cow, AS_OF).retentionPayoff().orThrow())
                    .as("seed %d, %s", SEED, cow)
                    .isGreaterThanOrEqualTo(payoff - ROUNDING);
        }
    }

    // From month 13 the table breeds no open cow any more, so both ways of keeping her are one
    @Test
    void pastTheBreedingMonthsNotBreedingIsWhatTheTableDoes() {
        WithoutBreeding without = new WithoutBreeding(REFERENCE.table());
        boolean differ = false;
        for (int parity = 1; parity <= 5; parity++) {
            for (int month = 1; month <= 20; month++) {
                for (int k = 1; k <= 3; k++) {
                    double bred = REFERENCE
                            .table()
                            .retentionPayoffCu(new CowStage(parity, month, 0, k))
                            .orElseThrow();
                    if (month > 12) {
                        assertThat(without.payoffCu(parity, month, k)).isCloseTo(bred, within(ROUNDING));
                    } else {
                        // a pregnancy never harms here, so breeding can lose no more than it costs
                        assertThat(without.payoffCu(parity, month, k)).isLessThan(bred + 25 * 10 + ROUNDING);
                        differ |= Math.abs(without.payoffCu(parity, month, k) - bred) > 1;
                    }
                }
            }
        }
        assertThat(differ).isTrue();
    }

    // Telescoping: with levels that stay, the sum over months of marginal net revenue is the pay-off of a cow that is
    // not bred
    @Test
    void theBestStayIsThePayoffWithoutBreedingIfLevelsStay() {
        HerdParameters reference = HerdParameters.REFERENCE;
        List<List<Double>> stay = List.of(List.of(1.0, 0.0, 0.0), List.of(0.0, 1.0, 0.0), List.of(0.0, 0.0, 1.0));
        HerdParameters steady = new HerdParameters(
                reference.groups(),
                reference.classFactors(),
                reference.heiferClassShares(),
                stay,
                reference.classChangeAtCalving(),
                reference.pregnantMilkFactors(),
                reference.pregnancyLossShares(),
                reference.freshExitFactor(),
                reference.dryIntakeShareOfWeight());
        CowValueTable table = CowValueTable.solve(CullingPrices.REFERENCE, steady);
        WithoutBreeding without = new WithoutBreeding(table);
        for (int parity = 1; parity <= 5; parity++) {
            for (int month = 1; month <= 20; month++) {
                for (int k = 1; k <= 3; k++) {
                    double level = reference.classFactors().get(k - 1);
                    assertThat(BestRemainingStay.MONTHS_AHEAD
                                    .ofOpenCow(table, parity, month, level, 21 - month, AS_OF)
                                    .orThrow())
                            .as("parity %d, month %d, class %d", parity, month, k)
                            .isCloseTo(without.payoffCu(parity, month, k), within(ROUNDING));
                }
            }
        }
    }

    @Test
    void cabrerasCowValueUnderTheBestPolicyIsTheRetentionPayoff() {
        CowValueTable table = REFERENCE.table();
        CowValueCabrera2012 value = CowValueCabrera2012.under(
                CullingPrices.REFERENCE, HerdParameters.REFERENCE, stage -> !table.isKept(stage));
        for (CowStage stage : CowValueTable.stages()) {
            OptionalDouble payoff = table.retentionPayoffCu(stage);
            assertThat(value.of(stage, AS_OF).value().isPresent()).isEqualTo(payoff.isPresent());
            payoff.ifPresent(cu ->
                    assertThat(value.of(stage, AS_OF).orThrow()).as("%s", stage).isCloseTo(cu, within(ROUNDING)));
        }
    }

    @Test
    void reasonsSayWhatSetsACowApart() {
        LocalDate calved = AS_OF.minusDays(320);
        CullingCow lateOpenLow =
                CullingCow.of("A", 2, calved, PregnancyState.OPEN, new MilkLevel(0.85, OptionalDouble.empty(), 9));
        List<Reason> reasons = REFERENCE.of(lateOpenLow, AS_OF).reasons();
        assertThat(reasons)
                .extracting(Reason::about)
                .containsExactlyInAnyOrder(Reason.About.PREGNANCY, Reason.About.MILK_LEVEL);
        assertThat(reasons)
                .allSatisfy(reason -> assertThat(reason.differenceCu()).isNegative());
        assertThat(reasons.get(0).words()).contains("open in month in milk 11");
        CullingCow ill = lateOpenLow.withHealth(new HealthBurden(60, 3));
        double well = REFERENCE.of(lateOpenLow, AS_OF).retentionPayoff().orThrow();
        assertThat(REFERENCE.of(ill, AS_OF).retentionPayoff().orThrow()).isLessThan(well - 50);
        assertThat(REFERENCE.of(ill, AS_OF).retentionPayoff().findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.HEALTH_NOT_VALUED);
    }

    @Test
    void anOpenCowIsToldUntilWhenToKeepHerUnbred() {
        LocalDate calved = AS_OF.minusDays(200);
        CowOutlook outlook = REFERENCE.of(
                CullingCow.of("A", 4, calved, PregnancyState.OPEN, new MilkLevel(1, OptionalDouble.empty(), 6)), AS_OF);
        Alternative alternative = outlook.alternative().orElseThrow();
        assertThat(alternative.untilMonthInMilk()).isGreaterThan(7);
        assertThat(alternative.until())
                .isEqualTo(calved.plusDays((long) Math.ceil((alternative.untilMonthInMilk() - 1) * 30.4375)));
        assertThat(alternative.isBetter())
                .isEqualTo(alternative.payoff().orThrow()
                        > outlook.retentionPayoff().orThrow());
        // not to be bred, that way is the only one, and the pay-off is that of it
        CowOutlook unbred = REFERENCE.of(
                CullingCow.of("A", 4, calved, PregnancyState.OPEN, new MilkLevel(1, OptionalDouble.empty(), 6))
                        .notToBeBred(),
                AS_OF);
        assertThat(unbred.retentionPayoff().orThrow())
                .isCloseTo(alternative.payoff().orThrow(), within(ROUNDING));
        assertThat(unbred.alternative()).isEmpty();
    }

    @Test
    void whatIsMissingIsSaid() {
        CullingCow unknown = new CullingCow(
                "A", 2, Optional.empty(), PregnancyState.NOT_KNOWN, MilkLevel.NOT_KNOWN, true, Optional.empty());
        CowOutlook noCalving = REFERENCE.of(unknown, AS_OF);
        assertThat(noCalving.retentionPayoff().findings())
                .extracting(Finding::code)
                .contains(FindingCode.NO_CALVING);
        assertThat(noCalving.suggestion()).isEmpty();
        assertThat(REFERENCE
                        .of(CullingCow.of("A", 2, AS_OF, PregnancyState.NOT_KNOWN, MilkLevel.NOT_KNOWN), AS_OF)
                        .retentionPayoff()
                        .findings())
                .extracting(Finding::code)
                .contains(
                        FindingCode.PREGNANCY_NOT_CHECKED,
                        FindingCode.MILK_LEVEL_ASSUMED,
                        FindingCode.HEALTH_NOT_VALUED);
        // open for 15 months and still bred: past the table
        assertThat(REFERENCE
                        .of(
                                CullingCow.of(
                                        "A",
                                        2,
                                        AS_OF.minusDays(460),
                                        PregnancyState.OPEN,
                                        new MilkLevel(1, OptionalDouble.empty(), 1)),
                                AS_OF)
                        .retentionPayoff()
                        .findings())
                .extracting(Finding::code)
                .contains(FindingCode.OUTSIDE_VALUE_TABLE, FindingCode.MILK_LEVEL_OF_ONE_TEST);
        // conceived before she calved
        assertThat(REFERENCE
                        .of(
                                CullingCow.of(
                                        "A",
                                        2,
                                        AS_OF.minusDays(10),
                                        PregnancyState.pregnantSince(AS_OF.minusDays(20)),
                                        MilkLevel.NOT_KNOWN),
                                AS_OF)
                        .retentionPayoff()
                        .value())
                .isEmpty();
    }

    @Test
    void aHerdIsInTheOrderOfItsPayoffsWithRanksUnderEveryChange() {
        Random random = new Random(SEED);
        List<CullingCow> cows = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            cows.add(random(random, i));
        }
        cows.add(new CullingCow(
                "no calving", 1, Optional.empty(), PregnancyState.OPEN, MilkLevel.NOT_KNOWN, true, Optional.empty()));
        CullingRanking ranking = CullingRanking.of(cows, REFERENCE, AS_OF);
        assertThat(ranking.cows())
                .hasSize(300)
                .isSortedAccordingTo((one, other) -> Double.compare(one.payoffCu(), other.payoffCu()));
        assertThat(ranking.cows())
                .allSatisfy(cow -> assertThat(cow.rank()).isBetween(cow.lowestRank(), cow.highestRank()))
                .anySatisfy(cow -> assertThat(cow.highestRank()).isGreaterThan(cow.lowestRank()))
                .allSatisfy(cow -> assertThat(cow.highestRank()).isLessThanOrEqualTo(300));
        assertThat(ranking.notRanked()).extracting(CowOutlook::cow).containsExactly("no calving");
        assertThat(CullingRanking.of(List.of(), REFERENCE, AS_OF).cows()).isEmpty();
    }

    @Test
    void withoutPricesTheListIsByMilkAndSaysSo() {
        LocalDate calved = AS_OF.minusDays(100);
        List<MilkOnlyRanking.Listed> list = MilkOnlyRanking.LOWEST_FIRST.of(
                List.of(
                        CullingCow.of("new", 1, calved, PregnancyState.OPEN, MilkLevel.NOT_KNOWN),
                        CullingCow.of(
                                "high", 1, calved, PregnancyState.OPEN, new MilkLevel(1.2, OptionalDouble.empty(), 4)),
                        CullingCow.of(
                                "low",
                                3,
                                calved,
                                PregnancyState.OPEN,
                                MilkLevel.ofProjection(6300, 7000, OptionalDouble.of(350), 4))),
                AS_OF);
        assertThat(list).extracting(MilkOnlyRanking.Listed::cow).containsExactly("low", "high", "new");
        assertThat(list.get(0).levelPct().orThrow()).isCloseTo(90, within(ROUNDING));
        assertThat(list.get(0).levelPct().findings()).extracting(Finding::code).contains(FindingCode.PRICES_NOT_SET);
        assertThat(list.get(2).levelPct().value()).isEmpty();
    }

    @Test
    void herBreedingRecordTellsWhetherSheIsPregnant() {
        LocalDate calved = AS_OF.minusDays(150);
        BreedingHistory calving = BreedingHistory.NONE.withCalvings(List.of(Calving.on(calved)));
        BreedingHistory served = calving.withInseminations(List.of(Insemination.on(calved.plusDays(70))));
        assertThat(stateOf(calving)).isEqualTo(PregnancyState.NOT_KNOWN);
        assertThat(stateOf(served)).isEqualTo(PregnancyState.inseminatedOn(calved.plusDays(70)));
        assertThat(stateOf(served.withChecks(
                        List.of(PregnancyCheck.of(calved.plusDays(110), PregnancyCheck.Result.PREGNANT)))))
                .isEqualTo(PregnancyState.pregnantSince(calved.plusDays(70)));
        assertThat(stateOf(served.withChecks(
                        List.of(PregnancyCheck.of(calved.plusDays(110), PregnancyCheck.Result.OPEN)))))
                .isEqualTo(PregnancyState.OPEN);
        // found pregnant and never served as far as is known: 35 days before the check
        PregnancyState assumed = stateOf(
                calving.withChecks(List.of(PregnancyCheck.of(calved.plusDays(110), PregnancyCheck.Result.PREGNANT))));
        assertThat(assumed.date()).contains(calved.plusDays(75));
        assertThat(assumed.pregnantShare(AS_OF)).isEqualTo(1);
        assertThat(stateOf(calving.withDryOffs(List.of(new DryOff(calved.plusDays(120)))))
                        .monthsPregnant())
                .hasValue(8);
        assertThat(PregnancyState.ofRecord(BreedingRecord.of("A", calving, calved.plusDays(20))))
                .isEqualTo(PregnancyState.OPEN);
        CowOutlook outlook = REFERENCE.of(CullingCow.of("A", 2, calved, assumed, MilkLevel.NOT_KNOWN), AS_OF);
        assertThat(outlook.retentionPayoff().findings())
                .extracting(Finding::code)
                .contains(FindingCode.CONCEPTION_ASSUMED);
    }

    private static PregnancyState stateOf(BreedingHistory history) {
        return PregnancyState.ofRecord(BreedingRecord.of("A", history, AS_OF));
    }

    @Test
    void aMeanThatEndsGoesOnToFallAsItDid() {
        // halves in 60 days up to day 305
        MilkByMonth milk = MilkByMonth.ofMeanTo(day -> 40 * Math.pow(0.5, day / 60.0), 305);
        assertThat(milk.kgPerDay(20)).isCloseTo(40 * Math.pow(0.5, 19.5 * 30.4375 / 60), within(0.01));
        // one that rises at the end is held
        assertThat(MilkByMonth.ofMeanTo(day -> day, 305).kgPerDay(20)).isCloseTo(305, within(ROUNDING));
    }

    @Test
    void anUnsureLevelIsMovedToTheMean() {
        MilkLevel level = MilkLevel.ofProjection(8400, 7000, OptionalDouble.of(700), 1);
        assertThat(level.ratio()).isCloseTo(1.2, within(1e-12));
        assertThat(level.standardError().orElseThrow()).isCloseTo(0.1, within(1e-12));
        assertThat(level.shrunk(0.4).ratio()).isCloseTo(1.08, within(1e-12));
    }
}
