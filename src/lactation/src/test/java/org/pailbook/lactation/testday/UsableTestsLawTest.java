package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/** What may take part in a milk figure. Days and limits: ICAR, from memory; which of two entries of a day counts: ours. */
class UsableTestsLawTest {
    private static final LocalDate CALVING = LocalDate.of(2024, 3, 25);
    private static final LocalDate LATE = LocalDate.of(2026, 1, 1);
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static TestDay onDay(int daysInMilk, double milkKg) {
        return TestDay.ofMilk(CALVING.plusDays(daysInMilk), milkKg);
    }

    private static UsableTests usable(TestDay... tests) {
        return UsableTests.of(Lactation.inMilk(1, CALVING, List.of(tests)), LATE);
    }

    @Test
    void theFirstTestAfterColostrumIsOnDay5() {
        UsableTests tests = usable(onDay(4, 20), onDay(5, 21));

        assertThat(tests.daysInMilk()).containsExactly(5);
        assertThat(tests.milkKg()).containsExactly(21);
        assertThat(tests.findings()).extracting(Finding::code).containsExactly(FindingCode.TEST_ON_COLOSTRUM_DAYS);
    }

    @Test
    void testsOnOrBeforeTheCalvingDayBelongToNoYield() {
        UsableTests tests = usable(onDay(-3, 20), onDay(0, 20), onDay(1, 20), onDay(30, 25));

        assertThat(tests.count()).isEqualTo(1);
        assertThat(tests.findings())
                .extracting(Finding::code)
                .containsExactly(
                        FindingCode.TEST_BEFORE_CALVING,
                        FindingCode.TEST_BEFORE_CALVING,
                        FindingCode.TEST_ON_COLOSTRUM_DAYS);
    }

    @Test
    void aTestOnTheLastMilkingDayCountsAndOneAfterItDoesNot() {
        Lactation dry = Lactation.inMilk(1, CALVING, List.of(onDay(100, 20), onDay(101, 20)))
                .withEndDate(CALVING.plusDays(100));

        UsableTests tests = UsableTests.of(dry, LATE);

        assertThat(tests.daysInMilk()).containsExactly(100);
        assertThat(tests.findings())
                .extracting(Finding::code, Finding::date)
                .containsExactly(tuple(FindingCode.TEST_AFTER_END, Optional.of(CALVING.plusDays(101))));
    }

    @Test
    void anEndAfterTheAsOfDateHasNotHappenedAndLaterTestsAreNotThere() {
        Lactation dry = Lactation.inMilk(1, CALVING, List.of(onDay(50, 20), onDay(90, 18)))
                .withEndDate(CALVING.plusDays(60));

        UsableTests tests = UsableTests.of(dry, CALVING.plusDays(55));

        assertThat(tests.daysInMilk()).containsExactly(50);
        assertThat(tests.inputs()).hasSize(1);
        assertThat(tests.findings()).isEmpty();
    }

    @Test
    void weightsAtTheLimitsAreUsedAndJustOutsideAreKeptBack() {
        UsableTests tests = usable(onDay(10, 2.9), onDay(11, 3.0), onDay(12, 99.9), onDay(13, 100.0));

        assertThat(tests.milkKg()).containsExactly(3.0, 99.9);
        assertThat(tests.findings())
                .extracting(Finding::code, Finding::field, Finding::seen, Finding::expected)
                .containsExactly(
                        tuple(
                                FindingCode.OUT_OF_RANGE,
                                Optional.of("milkKg"),
                                Optional.of("2.9 kg"),
                                Optional.of("3.0 to 99.9 kg")),
                        tuple(
                                FindingCode.OUT_OF_RANGE,
                                Optional.of("milkKg"),
                                Optional.of("100.0 kg"),
                                Optional.of("3.0 to 99.9 kg")));
    }

    @Test
    void ofTwoTestsOnOneDayTheLaterEntryCountsAndTheOtherIsNamed() {
        UsableTests tests = usable(onDay(40, 30), onDay(40, 31));

        assertThat(tests.milkKg()).containsExactly(31);
        assertThat(tests.leftOut())
                .containsExactly(UsedInput.leftOut("test-day", CALVING.plusDays(40), "duplicate-test-day"));
    }

    @Test
    void aSecondEntryWithoutAWeightDoesNotEraseTheFirst() {
        TestDay sampleOnly = new TestDay(CALVING.plusDays(40), NONE, OptionalDouble.of(4), NONE, NONE, NONE);

        UsableTests tests = usable(onDay(40, 30), sampleOnly);

        assertThat(tests.milkKg()).containsExactly(30);
        assertThat(tests.findings()).extracting(Finding::code).containsExactly(FindingCode.MILK_MISSING);
    }

    @Test
    void everyTestUpToTheAsOfDateIsEitherUsedOrLeftOutWithAReason() {
        long seed = 20240325;
        Random random = new Random(seed);
        for (int herd = 0; herd < 200; herd++) {
            List<TestDay> recorded = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                recorded.add(onDay(random.nextInt(40) - 5, random.nextDouble() * 120));
            }
            LocalDate asOf = CALVING.plusDays(random.nextInt(40));
            UsableTests tests = UsableTests.of(Lactation.inMilk(2, CALVING, recorded), asOf);

            long known =
                    recorded.stream().filter(test -> !test.date().isAfter(asOf)).count();
            assertThat(tests.inputs()).as("seed %d herd %d", seed, herd).hasSize((int) known);
            assertThat(tests.findings()).hasSameSizeAs(tests.leftOut());
            assertThat(tests.tests()).extracting(TestDay::date).isSorted().doesNotHaveDuplicates();
            assertThat(tests.inputs()).extracting(UsedInput::date).isSorted();
            assertThat(tests.isEmpty()).isEqualTo(tests.count() == 0);
        }
    }

    @Test
    void aTestWithoutAWeightCannotBeCalledUsable() {
        TestDay blank = new TestDay(CALVING.plusDays(40), NONE, NONE, NONE, NONE, NONE);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> new UsableTests(CALVING, List.of(blank), List.of(), List.of()))
                .withMessageContaining("must all have a milk weight");
    }
}
