package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class EstimatedEndPublishedTest {
    private static final LocalDate CALVING = LocalDate.of(2001, 3, 25);

    private static LocalDate endAfterTestsOn(LocalDate... dates) {
        List<TestDay> tests =
                Arrays.stream(dates).map(date -> TestDay.ofMilk(date, 20)).toList();
        return EstimatedEnd.HALF_THE_LAST_INTERVAL
                .of(Lactation.inMilk(1, CALVING, tests))
                .orElseThrow();
    }

    @Test
    void icarsExampleEndsHalfOfThe28DaysAfterTheLastTest() {
        // ICAR's test interval example (from memory): tests on 22 November and 20 December, end 3 January
        assertThat(endAfterTestsOn(LocalDate.of(2001, 11, 22), LocalDate.of(2001, 12, 20)))
                .isEqualTo(LocalDate.of(2002, 1, 3));
    }

    @Test
    void anOddIntervalIsHalvedDownward() {
        assertThat(endAfterTestsOn(CALVING.plusDays(10), CALVING.plusDays(37))).isEqualTo(CALVING.plusDays(37 + 13));
    }

    @Test
    void neverMoreThan15DaysAfterTheLastTest() {
        // ours
        assertThat(endAfterTestsOn(CALVING.plusDays(10), CALVING.plusDays(70))).isEqualTo(CALVING.plusDays(85));
        assertThat(endAfterTestsOn(CALVING.plusDays(10), CALVING.plusDays(40))).isEqualTo(CALVING.plusDays(55));
    }

    @Test
    void oneTestTakesTheIntervalSinceCalving() {
        assertThat(endAfterTestsOn(CALVING.plusDays(20))).isEqualTo(CALVING.plusDays(30));
    }

    @Test
    void twoEntriesOfOneDayAreOneTest() {
        assertThat(endAfterTestsOn(CALVING.plusDays(20), CALVING.plusDays(44), CALVING.plusDays(44)))
                .isEqualTo(CALVING.plusDays(56));
    }

    @Test
    void withoutATestAfterCalvingThereIsNothingToEstimateFrom() {
        assertThat(EstimatedEnd.HALF_THE_LAST_INTERVAL.of(Lactation.inMilk(1, CALVING, List.of())))
                .isEmpty();
        assertThat(EstimatedEnd.HALF_THE_LAST_INTERVAL.of(
                        Lactation.inMilk(1, CALVING, List.of(TestDay.ofMilk(CALVING, 9)))))
                .isEmpty();
    }
}
