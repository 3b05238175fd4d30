package org.pailbook.lactation.accumulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class TestIntervalPublishedTest {
    private final AccumulatedYield example =
            TestIntervalMethod.STANDARD_305.accumulate(IcarExample.lactation(), IcarExample.END);

    @Test
    void icarsExampleRunsOver284Days() {
        // ICAR: 284 d, 26 March to 3 January
        assertThat(example.daysCovered()).isEqualTo(284);
        assertThat(example.fromDaysInMilk()).isEqualTo(1);
        assertThat(example.toDaysInMilk()).isEqualTo(284);
    }

    @Test
    void icarsExampleGives4973Point2KgOfMilk() {
        assertThat(example.milk().orThrow()).isCloseTo(4973.2, within(0.05));
    }

    @Test
    void icarsExampleGives190Point2KgOfFat() {
        // published 190.2, from fat of each test in whole grams; unrounded 190.2157 by hand
        assertThat(example.fat().orThrow()).isCloseTo(190.2, within(0.05));
        assertThat(example.fat().orThrow()).isCloseTo(190.2157, within(0.00005));
    }

    @Test
    void wholeGramsGive190Point203KgOfFat() {
        // ICAR's own column of fat in g
        double[] fatG = {1029, 856, 904, 824, 778, 721, 587, 446, 287, 231};
        double[] days = {14, 42, 72, 104, 130, 158, 184, 216, 242, 270};
        assertThat(TestIntervalMethod.sumKg(days, fatG, 10, 284)).isCloseTo(190203.0, within(0.5));
    }

    @Test
    void icarsExampleGives3Point82PercentFat() {
        // ICAR: 3.82; 100 x 190.2157 / 4973.2 = 3.8248
        assertThat(example.fatPct().orThrow()).isCloseTo(3.82, within(0.005));
        assertThat(example.fatPct().orThrow()).isCloseTo(3.8248, within(0.00005));
    }

    @Test
    void icarsExampleIntervalByInterval() {
        // worked by hand from ICAR's rows
        assertThat(example.milk().explanation().parts())
                .extracting(part -> Math.round(part.amount() * 10) / 10.0)
                .containsExactly(394.8, 742.0, 771.0, 796.8, 564.2, 532.0, 403.0, 364.8, 200.2, 142.8, 61.6);
        List<Explanation.Part> fat = example.fat().explanation().parts();
        assertThat(fat)
                .extracting(part -> Math.round(part.amount() * 10000) / 10000.0)
                .containsExactly(
                        14.4102, 26.3886, 26.4, 27.648, 20.8169, 20.9804, 17.0079, 16.5408, 9.5355, 7.2534, 3.234);
        assertThat(example.milk().explanation().parts().get(1).what())
                .isEqualTo("days 15 to 42: 28 d x (28.2 + 24.8) / 2 kg");
        assertThat(example.milk().explanation().parts().get(10).what()).isEqualTo("days 271 to 284: 14 d x 4.4 kg");
    }

    @Test
    void proteinWasNotMeasuredInTheExampleAndIsNotMadeUp() {
        assertThat(example.protein().value()).isEmpty();
        assertThat(example.proteinPct().value()).isEmpty();
        assertThat(example.protein().findings()).extracting(Finding::code).contains(FindingCode.PROTEIN_NEEDED);
        assertThat(example.milkTests()).isEqualTo(10);
        assertThat(example.fatTests()).isEqualTo(10);
        assertThat(example.proteinTests()).isZero();
    }

    @Test
    void januaryNinthToFebruaryFourteenthIs36Days() {
        // University of Kentucky extension: an interval runs from the day after the last test through this one
        LocalDate ninth = LocalDate.of(2024, 1, 9);
        Lactation lactation = Lactation.inMilk(
                2,
                ninth.minusDays(30),
                List.of(TestDay.ofMilk(ninth, 30), TestDay.ofMilk(LocalDate.of(2024, 2, 14), 30)));
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(lactation, LocalDate.of(2024, 2, 14));
        assertThat(yield.milk().explanation().parts().get(1).amount()).isEqualTo(36 * 30.0);
    }

    @Test
    void theIntervalThatSpansDay305IsCutOnItsStraightLine() {
        // by hand: day 295 20 kg, day 325 14 kg, so 18 kg on day 305: 295 x 20 + 10 x (20 + 18) / 2
        LocalDate calving = LocalDate.of(2023, 1, 1);
        List<TestDay> tests = List.of(
                TestDay.ofMilk(calving.plusDays(20), 20),
                TestDay.ofMilk(calving.plusDays(95), 20),
                TestDay.ofMilk(calving.plusDays(170), 20),
                TestDay.ofMilk(calving.plusDays(245), 20),
                TestDay.ofMilk(calving.plusDays(295), 20),
                TestDay.ofMilk(calving.plusDays(325), 14));
        Lactation lactation = new Lactation(1, calving, Optional.of(calving.plusDays(340)), tests);
        AccumulatedYield yield = TestIntervalMethod.STANDARD_305.accumulate(lactation, calving.plusDays(400));
        assertThat(yield.milk().orThrow()).isCloseTo(5900 + 190, within(1e-9));
        assertThat(yield.toDaysInMilk()).isEqualTo(305);
        // whole: 295 x 20 + 30 x 17 + 15 x 14
        assertThat(TestIntervalMethod.WHOLE_LACTATION
                        .accumulate(lactation, calving.plusDays(400))
                        .milk()
                        .orThrow())
                .isCloseTo(6620, within(1e-9));
    }
}
