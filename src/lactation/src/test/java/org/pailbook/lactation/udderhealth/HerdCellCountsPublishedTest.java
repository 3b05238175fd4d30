package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** The herd of forty worked by hand (ours, derived), and the windows of the rules day by day. */
class HerdCellCountsPublishedTest {
    private static final LocalDate CALVED = LocalDate.of(2025, 6, 1);
    private static final LocalDate BEFORE = LocalDate.of(2025, 9, 1);
    private static final LocalDate NOW = LocalDate.of(2025, 10, 1);

    private static TestDay test(LocalDate date, double scc) {
        return TestDay.ofMilk(date, 25).withSccThousandPerMl(scc);
    }

    private static CowCellCounts cow(String name, int parity, LocalDate calved, TestDay... tests) {
        Lactation lactation = Lactation.inMilk(parity, calved, List.of(tests));
        return new CowCellCounts(
                name,
                false,
                List.of(new AssembledLactation(
                        lactation, AssembledLactation.End.IN_MILK, Optional.empty(), List.of())));
    }

    private static List<CowCellCounts> herd(int ll, int lh, int hl, int hh) {
        List<CowCellCounts> cows = new ArrayList<>();
        double[][] counts = {{80, 90}, {80, 200}, {200, 199}, {500, 300}};
        int[] many = {ll, lh, hl, hh};
        for (int kind = 0; kind < 4; kind++) {
            for (int i = 0; i < many[kind]; i++) {
                cows.add(cow(kind + "-" + i, 2, CALVED, test(BEFORE, counts[kind][0]), test(NOW, counts[kind][1])));
            }
        }
        return cows;
    }

    @Test
    void fortyCowsHaveTheirFourRates() {
        // check V25: LL 26, LH 4, HL 3, HH 7
        HerdCellCounts herd = HerdCellCounts.of(herd(26, 4, 3, 7), CellCountCut.USUAL, NOW);
        List<Measured> rates = herd.ratesOfLastTest();
        assertThat(rates.get(0).figure().orThrow()).isCloseTo(13.3333, within(5e-5));
        assertThat(rates.get(0).numerator()).isEqualTo(4);
        assertThat(rates.get(0).denominator()).isEqualTo(30);
        assertThat(rates.get(1).figure().orThrow()).isCloseTo(30, within(5e-5));
        assertThat(rates.get(2).figure().orThrow()).isCloseTo(17.5, within(5e-5));
        assertThat(herd.prevalence().figure().orThrow()).isCloseTo(27.5, within(5e-5));
        assertThat(herd.prevalence().denominator()).isEqualTo(40);
        assertThat(herd.ratesOfYear().get(0).denominator()).isEqualTo(30);
        assertThat(herd.findings()).extracting(Finding::code).containsExactly(FindingCode.LOW_COUNT_IS_NO_PROOF);
    }

    @Test
    void statesPartTheHerdWhateverTheCounts() {
        Random random = new Random(25);
        for (int i = 0; i < 50; i++) {
            int[] many = {random.nextInt(30), random.nextInt(30), random.nextInt(30), random.nextInt(30)};
            HerdCellCounts herd = HerdCellCounts.of(herd(many[0], many[1], many[2], many[3]), CellCountCut.USUAL, NOW);
            List<Measured> rates = herd.ratesOfLastTest();
            assertThat(rates.get(0).denominator() + rates.get(1).denominator())
                    .as("seed 25")
                    .isEqualTo(rates.get(2).denominator());
            assertThat(herd.prevalence().numerator()).isEqualTo(many[1] + many[3]);
        }
    }

    @Test
    void twoTestsAreInARowWith15To70DaysBetweenThem() {
        for (int days : new int[] {14, 15, 70, 71}) {
            CowCellCounts cow = cow("A", 2, CALVED, test(BEFORE, 80), test(BEFORE.plusDays(days), 300));
            assertThat(cow.lastPair(CellCountCut.USUAL, BEFORE.plusDays(100)).isPresent())
                    .as(days + " days")
                    .isEqualTo(days >= 15 && days <= 70);
        }
    }

    @Test
    void colostrumDaysAndZeroCountsAreNotClassified() {
        CowCellCounts cow = cow(
                "A",
                2,
                CALVED,
                test(CALVED.plusDays(4), 900),
                test(CALVED.plusDays(20), 0),
                test(CALVED.plusDays(30), 90));
        assertThat(cow.pairs(CellCountCut.USUAL, NOW)).isEmpty();
        assertThat(cow.lastCounted(NOW).orElseThrow().sccThousandPerMl()).hasValue(90);
    }

    @Test
    void aTestSentTwiceCountsOnce() {
        CowCellCounts once = cow("A", 2, CALVED, test(BEFORE, 80), test(NOW, 300));
        CowCellCounts twice = cow("A", 2, CALVED, test(BEFORE, 80), test(NOW, 90), test(NOW, 300));
        assertThat(twice.lastPair(CellCountCut.USUAL, NOW)).isEqualTo(once.lastPair(CellCountCut.USUAL, NOW));
    }

    private static CowCellCounts overDryPeriod(int lastDaysBefore, double last, int firstDay, double first) {
        LocalDate dryOff = CALVED.plusDays(300);
        LocalDate calvedAgain = dryOff.plusDays(60);
        Lactation ended =
                new Lactation(1, CALVED, Optional.of(dryOff), List.of(test(dryOff.minusDays(lastDaysBefore), last)));
        Lactation next = Lactation.inMilk(2, calvedAgain, List.of(test(calvedAgain.plusDays(firstDay), first)));
        return new CowCellCounts(
                "A",
                false,
                List.of(
                        new AssembledLactation(
                                ended,
                                AssembledLactation.End.DRIED_OFF,
                                Optional.of(calvedAgain.minusDays(1)),
                                List.of()),
                        new AssembledLactation(next, AssembledLactation.End.IN_MILK, Optional.empty(), List.of())));
    }

    @Test
    void overADryPeriodTheTestsAreNoFurtherThan60DaysBeforeAnd35After() {
        LocalDate asOf = CALVED.plusDays(450);
        assertThat(overDryPeriod(60, 90, 35, 300).dryPeriods(CellCountCut.USUAL, asOf))
                .extracting(CowCellCounts.DryPeriod::state)
                .containsExactly(CellCountState.NEW);
        assertThat(overDryPeriod(61, 90, 35, 300).dryPeriods(CellCountCut.USUAL, asOf))
                .isEmpty();
        assertThat(overDryPeriod(60, 90, 36, 300).dryPeriods(CellCountCut.USUAL, asOf))
                .isEmpty();
        List<Measured> rates = HerdCellCounts.of(
                        List.of(
                                overDryPeriod(20, 90, 20, 90),
                                overDryPeriod(20, 90, 20, 300),
                                overDryPeriod(20, 400, 20, 90),
                                overDryPeriod(20, 400, 20, 300)),
                        CellCountCut.USUAL,
                        asOf)
                .ratesOverDryPeriod();
        assertThat(rates).extracting(Measured::numerator).containsExactly(1.0, 1.0, 1.0, 1.0);
        assertThat(rates).extracting(Measured::denominator).containsExactly(4.0, 4.0, 2.0, 2.0);
    }

    @Test
    void freshHeifersAreJudgedAtTheirFirstTest() {
        List<CowCellCounts> cows = List.of(
                cow("A", 1, NOW.minusDays(20), test(NOW.minusDays(2), 300), test(NOW, 90)),
                cow("B", 1, NOW.minusDays(20), test(NOW, 90)),
                cow("C", 1, NOW.minusDays(60), test(NOW, 900)),
                cow("D", 2, NOW.minusDays(20), test(NOW, 900)));
        Measured share = HerdCellCounts.of(cows, CellCountCut.USUAL, NOW).freshHeifersHigh();
        assertThat(share.numerator()).isEqualTo(1);
        assertThat(share.denominator()).isEqualTo(2);
    }

    @Test
    void aHerdWithoutCountsOrWithOldOnesSaysSo() {
        HerdCellCounts none = HerdCellCounts.of(List.of(), CellCountCut.USUAL, NOW);
        assertThat(none.findings()).extracting(Finding::code).containsExactly(FindingCode.SCC_NEEDED);
        assertThat(none.prevalence().figure().value()).isEmpty();
        assertThat(none.newInfectionRisksOfLastTwoTests()).isEmpty();
        HerdCellCounts old = HerdCellCounts.of(herd(3, 0, 0, 0), CellCountCut.USUAL, NOW.plusDays(91));
        assertThat(old.findings().get(0).code()).isEqualTo(FindingCode.NO_RECENT_TEST);
        assertThat(old.findings().get(0).seen()).hasValue("91 days ago");
        assertThat(HerdCellCounts.of(herd(3, 0, 0, 0), CellCountCut.USUAL, NOW.plusDays(90))
                        .findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.LOW_COUNT_IS_NO_PROOF);
    }

    @Test
    void theCutIsBetween100And400() {
        assertThatIllegalArgumentException().isThrownBy(() -> new CellCountCut(99));
        assertThatIllegalArgumentException().isThrownBy(() -> new CellCountCut(401));
        assertThat(HerdCellCounts.of(herd(0, 4, 0, 0), new CellCountCut(250), NOW)
                        .prevalence()
                        .numerator())
                .isZero();
    }
}
