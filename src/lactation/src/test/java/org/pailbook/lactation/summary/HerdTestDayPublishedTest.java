package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.persistency.HerdStay;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** A herd's test day as a whole; bounds are ours unless a source stands beside them. */
class HerdTestDayPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
    private static final LocalDate BEFORE = DAY.minusDays(28);

    private static CowOnDay cow(int number, double beforeKg, double nowKg) {
        CowHistory history = CowHistory.builder()
                .calving(new Calving(DAY.minusDays(100), OptionalInt.of(2)))
                .testDay(TestDay.ofMilk(BEFORE, beforeKg))
                .testDay(TestDay.ofMilk(DAY, nowKg))
                .build();
        return CowOnDay.of("cow " + number, history, "HOL", DAY);
    }

    /** So many of ten cows give another share of the 25 kg they gave before. */
    private static HerdTestDay ten(int changed, double share) {
        List<CowOnDay> cows = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            cows.add(cow(i, 25, i < changed ? 25 * share : 25));
        }
        return HerdTestDay.of(cows, DAY);
    }

    private static List<FindingCode> codes(HerdTestDay day) {
        return day.findings().stream().map(Finding::code).toList();
    }

    // 1 kg is 2.2046226218 lb (exact definition of the pound): the herd's mean is that many times itself if pounds were
    // entered as kilograms, .45359237 the other way round
    @Test
    void poundsEnteredAsKilogramsAreAskedAboutBothWays() {
        assertThat(codes(ten(10, 2.2046226218))).containsExactly(FindingCode.UNIT_DOUBTFUL);
        assertThat(codes(ten(10, 0.45359237))).containsExactly(FindingCode.UNIT_DOUBTFUL);
        assertThat(ten(10, 2.2046226218).swapped()).isEmpty();
        assertThat(ten(10, 2.2046226218).findings().get(0).seen().orElseThrow())
                .contains("times the test before, 10 cows");
    }

    @Test
    void moreThanThreeOfTenFarOffInOneDirectionIsTheWholeDay() {
        assertThat(codes(ten(4, 0.5))).containsExactly(FindingCode.WHOLE_TEST_DAY_OFF);
        assertThat(codes(ten(4, 1.7))).containsExactly(FindingCode.WHOLE_TEST_DAY_OFF);
        assertThat(codes(ten(3, 0.5))).isEmpty();
        // a whole herd that gives 20 % less is no reason to ask
        assertThat(codes(ten(10, 0.8))).isEmpty();
        // four cows say nothing of a day as a whole
        assertThat(HerdTestDay.of(List.of(cow(0, 25, 55), cow(1, 25, 55), cow(2, 25, 55), cow(3, 25, 55)), DAY)
                        .findings())
                .isEmpty();
    }

    @Test
    void twoCowsThatFitEachOthersPlaceMayHaveBeenSwapped() {
        List<CowOnDay> cows = new ArrayList<>(List.of(cow(0, 40, 15), cow(1, 15, 40)));
        for (int i = 2; i < 10; i++) {
            cows.add(cow(i, 25, 24));
        }
        HerdTestDay day = HerdTestDay.of(cows, DAY);
        assertThat(day.findings()).isEmpty();
        assertThat(day.swapped()).hasSize(1);
        assertThat(day.swapped().get(0).animal()).isEqualTo("cow 0");
        assertThat(day.swapped().get(0).other()).isEqualTo("cow 1");
        assertThat(day.ofCow("cow 1").orElseThrow().code()).isEqualTo(FindingCode.COWS_SWAPPED);
        assertThat(day.ofCow("cow 1").orElseThrow().seen()).contains("40.0 kg; the other cow 15.0 kg");
        assertThat(day.ofCow("cow 2")).isEmpty();
        // far off, and not near what the other was to give
        cows.set(1, cow(1, 15, 30));
        assertThat(HerdTestDay.of(cows, DAY).swapped()).isEmpty();
    }

    @Test
    void theHerdsFiguresOfThatDayCarryWhatIsSaidOfIt() {
        List<CowOnDay> cows = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            cows.add(cow(i, 25, 25 * 0.45359237));
        }
        HerdOnDay herd = HerdOnDay.of(cows, DAY);
        for (Figure figure : List.of(herd.milkOfLastTestDate(), herd.meanMilkOfLastTestDate())) {
            assertThat(figure.findings()).extracting(Finding::code).contains(FindingCode.UNIT_DOUBTFUL);
            assertThat(figure.value()).isPresent();
        }
    }

    // Section 5 of the decision notes, check V35 (derived): cows 512.0 kg; tank 470 L x 1.03 = 484.1, calves 18, house
    // 4,
    // withheld 12: 518.1 kg; -1.177379 %
    @Test
    void cowsAgainstTheTankWorkedByHand() {
        TankGap fine = new TankGap(DAY, 512.0, 470 * 1.03 + 18 + 4 + 12);
        assertThat(fine.percent()).isCloseTo(-1.177379, within(5e-7));
        assertThat(fine.finding()).isEmpty();
        assertThat(new TankGap(DAY, 96, 100).finding().orElseThrow().seen().orElseThrow())
                .contains("-4.0 %: look");
        assertThat(new TankGap(DAY, 108, 100).finding().orElseThrow().seen().orElseThrow())
                .contains("8.0 %: explain");
        assertThat(new TankGap(DAY, 220, 100).finding().orElseThrow().seen().orElseThrow())
                .contains("120.0 %: the test day is suspect");
        assertThatIllegalArgumentException().isThrownBy(() -> new TankGap(DAY, 100, 0));
    }

    // Check V40 (IDF, from a transcription): 30 kg of 3.8 % fat and 3.2 % protein are 29.028 kg FPCM; every day of a
    // year, and 365.25 days of them a cow-year
    @Test
    void aCowThatGivesThirtyKilogramsADayMakesThatManyCorrected() {
        LocalDate calved = DAY.minusDays(400);
        List<TestDay> tests = new ArrayList<>();
        for (int day = 10; day <= 400; day += 30) {
            tests.add(TestDay.ofMilk(calved.plusDays(day), 30).withFatPct(3.8).withProteinPct(3.2));
        }
        HerdStay there = new HerdStay(calved, Optional.empty(), List.of(Lactation.inMilk(2, calved, tests)));
        Figure year = FpcmPerCowYear.IDF_2015.of(List.of(there), DAY);
        assertThat(year.orThrow()).isCloseTo(29.028 * 365.25, within(1e-6));
        assertThat(year.unit()).isEqualTo("kg/cow-year");
        // a test without a sample is bridged, and said
        tests.set(5, TestDay.ofMilk(tests.get(5).date(), 30));
        Figure bridged = FpcmPerCowYear.IDF_2015.of(
                List.of(new HerdStay(calved, Optional.empty(), List.of(Lactation.inMilk(2, calved, tests)))), DAY);
        assertThat(bridged.orThrow()).isCloseTo(29.028 * 365.25, within(1e-6));
        assertThat(bridged.findings()).extracting(Finding::code).contains(FindingCode.FAT_MISSING);
        // no year of tests yet: no figure
        assertThat(FpcmPerCowYear.IDF_2015
                        .of(List.of(there), calved.plusDays(200))
                        .value())
                .isEmpty();
    }
}
