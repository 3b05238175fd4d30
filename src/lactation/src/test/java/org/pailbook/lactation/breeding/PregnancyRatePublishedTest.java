package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.breeding.Pregnancy.Known;
import org.pailbook.lactation.event.BreedingDecision;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/** The six cows worked by hand (ours, derived), and the principle as published for one cow (California project text, read). */
class PregnancyRatePublishedTest {
    private static final double FOUR_DECIMALS = 5e-5;

    private static CycleRates rates(List<BreedingPeriod> periods) {
        return CycleRates.of(periods, SixCows.WAITING_DAYS, SixCows.LAST_DAY, 3);
    }

    @Test
    void sixCowsHaveSevenEligibleCyclesFiveServedAndThreePregnant() {
        // check V13
        CycleRates rates = rates(SixCows.all());
        assertThat(rates.cycles())
                .extracting(PregnancyRate21.Cycle::first)
                .containsExactly(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 1, 22), LocalDate.of(2026, 2, 12));
        assertThat(rates.cycles()).extracting(PregnancyRate21.Cycle::eligible).containsExactly(3, 3, 1);
        assertThat(rates.cycles()).extracting(PregnancyRate21.Cycle::served).containsExactly(2, 2, 1);
        assertThat(rates.cycles()).extracting(PregnancyRate21.Cycle::pregnant).containsExactly(1, 1, 1);
        Measured risk = rates.inseminationRiskOfYear();
        assertThat(risk.figure().orThrow()).isCloseTo(71.4286, within(FOUR_DECIMALS));
        assertThat(risk.numerator()).isEqualTo(5);
        Measured rate = rates.pregnancyRateOfYear();
        assertThat(rate.figure().orThrow()).isCloseTo(42.8571, within(FOUR_DECIMALS));
        assertThat(rate.numerator()).isEqualTo(3);
        assertThat(rate.denominator()).isEqualTo(7);
        assertThat(rate.figure().interval(0.95).orElseThrow().low()).isCloseTo(15.8220, within(FOUR_DECIMALS));
        assertThat(rate.figure().interval(0.95).orElseThrow().high()).isCloseTo(74.9542, within(FOUR_DECIMALS));
        // F conceived on the third of six days: outside the counted cycles, and said
        assertThat(rate.figure().findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.OUTSIDE_COUNTED_CYCLES, FindingCode.SMALL_NUMBER);
        assertThat(rate.figure().findings().get(0).seen()).hasValue("1");
    }

    @Test
    void conceptionRiskOfTheCountedServicesIsThreeOfFive() {
        // check V13: 60 %; F's service lies outside the counted cycles, and both of A's count
        List<CountedService> counted = SixCows.all().stream()
                .filter(period -> !period.animal().equals("F"))
                .flatMap(period -> period.services().stream())
                .toList();
        assertThat(counted).hasSize(5);
        ServiceOutcomes outcomes = new ServiceOutcomes(
                SixCows.all().stream()
                        .filter(period -> !period.animal().equals("F"))
                        .toList(),
                BreedingSettings.USUAL,
                LocalDate.of(2026, 1, 1),
                SixCows.LAST_DAY.plusDays(35));
        assertThat(outcomes.conceptionRisk().figure().orThrow()).isCloseTo(60, within(FOUR_DECIMALS));
        assertThat(outcomes.servicesPerConceptionStrict().figure().orThrow()).isCloseTo(5 / 3.0, within(1e-12));
        assertThat(outcomes.servicesPerConception().figure().orThrow()).isCloseTo(4 / 3.0, within(1e-12));
    }

    @Test
    void byDaysAtRiskItIs123DaysAndFourPregnancies() {
        // check V14
        CycleRates rates = rates(SixCows.all());
        assertThat(rates.cycles().stream()
                        .mapToInt(PregnancyRate21.Cycle::cowDays)
                        .sum())
                .isEqualTo(123);
        Measured rate = rates.pregnanciesPerCowCycle();
        assertThat(rate.numerator()).isEqualTo(4);
        assertThat(rate.figure().orThrow()).isCloseTo(68.2927, within(FOUR_DECIMALS));
        assertThat(CycleRates.riskByCowDays(4, 123)).isCloseTo(0.500565, within(5e-7));
    }

    @Test
    void daysOfEachCowInEachCycleAreAsWorkedByHand() {
        int[][] expected = {{21, 21, 0}, {8, 21, 21}, {21, 0, 0}, {13, 21, 8}, {4, 0, 0}, {6, 0, 0}};
        for (int cow = 0; cow < expected.length; cow++) {
            BreedingPeriod period = SixCows.all().get(cow);
            for (int cycle = 0; cycle < 3; cycle++) {
                LocalDate first = LocalDate.of(2026, 1, 1).plusDays(21L * cycle);
                LocalDate last = first.plusDays(20);
                assertThat(DaysAtRisk.of(period, SixCows.WAITING_DAYS, last).inCycle(first, last))
                        .as(period.animal() + " in cycle " + (cycle + 1))
                        .isEqualTo(expected[cow][cycle]);
            }
        }
    }

    @Test
    void aServedCowWithoutOutcomeCountsForServicesAndNotForPregnancies() {
        // the same herd, and nobody saw what became of D before she was sold
        List<BreedingPeriod> cows = new ArrayList<>(SixCows.all());
        BreedingPeriod sold = cows.remove(3);
        cows.add(new BreedingPeriod(
                "D",
                2,
                sold.calving(),
                List.of(CountedService.on(LocalDate.of(2026, 2, 5), Outcome.UNKNOWN)),
                List.of(),
                Optional.empty(),
                sold.leftOn(),
                List.of()));
        CycleRates rates = rates(cows);
        assertThat(rates.inseminationRiskOfYear().figure().orThrow()).isCloseTo(71.4286, within(FOUR_DECIMALS));
        // one of three pending: the middle cycle has no rate, and its cow-cycles are in no sum
        PregnancyRate21.Cycle middle = rates.cycles().get(1);
        assertThat(middle.pending()).isEqualTo(1);
        Measured ofMiddle = rates.pregnancyRate(middle);
        assertThat(ofMiddle.figure().value()).isEmpty();
        assertThat(ofMiddle.figure().findings()).extracting(Finding::code).containsExactly(FindingCode.OUTCOME_PENDING);
        Measured year = rates.pregnancyRateOfYear();
        assertThat(year.numerator()).isEqualTo(2);
        assertThat(year.denominator()).isEqualTo(4);
        assertThat(year.figure().findings()).extracting(Finding::code).contains(FindingCode.CYCLES_LEFT_OUT);
    }

    @Test
    void aCowThatConceivedOnDay120HadFourChancesByTheOtherWayOfCounting() {
        // check V12, California project text (read): cycles of a cow by her own days, waiting period 50
        assertThat(CycleRates.cyclesOfPregnantCow(120, 50)).isEqualTo(4);
        assertThat(CycleRates.cyclesOfOpenCow(90, 50)).isEqualTo(2);
    }

    @Test
    void aLossPutsHerBackAtRiskTheDayAfter() {
        LocalDate calving = LocalDate.of(2026, 1, 1);
        LocalDate conceived = calving.plusDays(60);
        LocalDate lost = calving.plusDays(100);
        BreedingPeriod cow = new BreedingPeriod(
                "G",
                2,
                Optional.of(calving),
                List.of(CountedService.on(conceived, Outcome.PREGNANT)),
                List.of(new Pregnancy(
                        Optional.of(conceived),
                        Known.SERVICE,
                        "",
                        Optional.of(calving.plusDays(95)),
                        1,
                        Optional.empty(),
                        Optional.of(lost),
                        Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                List.of());
        DaysAtRisk risk = DaysAtRisk.of(cow, 50, calving.plusDays(200));
        assertThat(risk.runs())
                .containsExactly(
                        new DaysAtRisk.Run(calving.plusDays(50), conceived, true),
                        new DaysAtRisk.Run(lost.plusDays(1), calving.plusDays(200), false));
        assertThat(risk.inCycle(calving.plusDays(90), calving.plusDays(110))).isEqualTo(10);
        assertThat(risk.inCycle(calving.plusDays(89), calving.plusDays(109))).isEqualTo(9);
    }

    @Test
    void aCowPutAsideForATimeIsNotAtRiskInItAndIsAgainAfterIt() {
        // ours: days put aside count nowhere. Calved 1 January, waiting 50 days; put aside from day 60, again to be
        // bred from day 70
        LocalDate calving = LocalDate.of(2026, 1, 1);
        BreedingHistory history = BreedingHistory.NONE
                .withCalvings(List.of(Calving.on(calving)))
                .withDecisions(List.of(
                        BreedingDecision.notToBreed(calving.plusDays(60), "lame"),
                        BreedingDecision.breedAgain(calving.plusDays(70))));
        BreedingPeriod cow =
                BreedingRecord.of("G", history, calving.plusDays(120)).now();
        assertThat(cow.notToBeBred()).isEmpty();
        DaysAtRisk risk = DaysAtRisk.of(cow, 50, calving.plusDays(120));
        assertThat(risk.between(calving.plusDays(50), calving.plusDays(120))).isEqualTo(71 - 10);
        assertThat(risk.inCycle(calving.plusDays(55), calving.plusDays(75))).isEqualTo(21 - 10);
        assertThat(risk.first()).hasValue(new DaysAtRisk.Run(calving.plusDays(50), calving.plusDays(59), false));
        assertThat(BreedingRecord.of("G", history, calving.plusDays(65)).now().notToBeBred())
                .hasValue(new PutAside(calving.plusDays(60), Optional.empty(), "lame"));
    }
}
