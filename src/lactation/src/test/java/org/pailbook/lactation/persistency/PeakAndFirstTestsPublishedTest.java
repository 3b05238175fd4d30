package org.pailbook.lactation.persistency;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Definitions worked on small cows; the source of each stands beside it. */
class PeakAndFirstTestsPublishedTest {
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);
    private static final LocalDate LATER = CALVING.plusDays(300);

    private static Lactation cow(double... dayAndKg) {
        List<TestDay> tests = new ArrayList<>();
        for (int i = 0; i < dayAndKg.length; i += 2) {
            tests.add(TestDay.ofMilk(CALVING.plusDays((long) dayAndKg[i]), dayAndKg[i + 1]));
        }
        return Lactation.inMilk(2, CALVING, tests);
    }

    private static List<FindingCode> codes(Figure figure) {
        return figure.findings().stream().map(Finding::code).toList();
    }

    @Test
    void theHighestTestBeforeDay150IsThePeak() {
        // Kentucky extension sheet (read): before 150 days in milk
        Lactation cow = cow(20, 30, 60, 36.5, 149, 41, 150, 45);
        Figure peak = PeakTest.WITHIN_150_DAYS.ofLactation(cow, LATER);
        assertThat(peak.orThrow()).isEqualTo(41);
        assertThat(peak.explanation().parts().get(0).what()).isEqualTo("day 149: 41.0 kg");
        assertThat(codes(peak)).isEmpty();
    }

    @Test
    void byTheOtherSheetItIsTheHighestOfTheFirst90Days() {
        // Utah extension sheet (read): within 90 days
        Lactation cow = cow(20, 30, 60, 36.5, 90, 38, 91, 41);
        assertThat(PeakTest.WITHIN_90_DAYS.ofLactation(cow, LATER).orThrow()).isEqualTo(38);
    }

    @Test
    void thePeakIsFixedPastDay100() {
        // Kentucky extension sheet (read)
        Lactation cow = cow(20, 30, 60, 36.5);
        assertThat(codes(PeakTest.WITHIN_150_DAYS.ofLactation(cow, CALVING.plusDays(100))))
                .containsExactly(FindingCode.PEAK_MAY_COME);
        assertThat(codes(PeakTest.WITHIN_150_DAYS.ofLactation(cow, CALVING.plusDays(101))))
                .isEmpty();
        assertThat(codes(PeakTest.WITHIN_150_DAYS.ofLactation(
                        cow.withEndDate(CALVING.plusDays(70)), CALVING.plusDays(80))))
                .isEmpty();
    }

    @Test
    void withoutATestInThoseDaysThereIsNoPeak() {
        assertThat(codes(PeakTest.WITHIN_150_DAYS.ofLactation(cow(150, 30), LATER)))
                .containsExactly(FindingCode.NO_TEST_DAYS);
    }

    @Test
    void ofTwoEqualTestsTheEarlierIsThePeak() {
        assertThat(PeakTest.WITHIN_150_DAYS
                        .ofLactation(cow(20, 36, 60, 36), LATER)
                        .explanation()
                        .parts()
                        .get(0)
                        .what())
                .startsWith("day 20");
    }

    @Test
    void summitIsTheMeanOfTheTwoHighestOfTheFirstThreeTests() {
        // from memory
        assertThat(SummitMilk.SUMMIT
                        .ofLactation(cow(20, 30, 50, 40, 80, 38, 110, 60), LATER)
                        .orThrow())
                .isEqualTo(39);
        assertThat(SummitMilk.SUMMIT
                        .ofLactation(cow(20, 40, 50, 38, 80, 30), LATER)
                        .orThrow())
                .isEqualTo(39);
        Figure summit = SummitMilk.SUMMIT.ofLactation(cow(20, 40, 50, 30, 80, 38), LATER);
        assertThat(summit.orThrow()).isEqualTo(39);
        assertThat(summit.explanation().parts().get(1).what()).isEqualTo("day 80: 38.0 kg / 2");
        assertThat(codes(SummitMilk.SUMMIT.ofLactation(cow(20, 40, 50, 30), LATER)))
                .containsExactly(FindingCode.TOO_FEW_TESTS);
    }

    @Test
    void theFirstTestCountsFromDay5ToDay40() {
        // ours
        assertThat(FirstTestYield.BY_DAY_40
                        .ofLactation(cow(4, 20, 5, 25, 40, 30), LATER)
                        .orThrow())
                .isEqualTo(25);
        assertThat(FirstTestYield.BY_DAY_40.ofLactation(cow(40, 30), LATER).orThrow())
                .isEqualTo(30);
        assertThat(codes(FirstTestYield.BY_DAY_40.ofLactation(cow(41, 30), LATER)))
                .containsExactly(FindingCode.FIRST_TEST_TOO_LATE);
        assertThat(codes(FirstTestYield.BY_DAY_40.ofLactation(cow(), LATER))).containsExactly(FindingCode.NO_TEST_DAYS);
        assertThat(FirstTestYield.BY_DAY_40
                        .ofLactation(cow(12, 30.25), LATER)
                        .explanation()
                        .parts()
                        .get(0)
                        .what())
                .isEqualTo("day 12: 30.3 kg");
    }
}
