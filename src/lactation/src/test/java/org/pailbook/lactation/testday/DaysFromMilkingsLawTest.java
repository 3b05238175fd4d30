package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Milking.Session;

/** Rules of ours: which days milkings make, and what wins. */
class DaysFromMilkingsLawTest {
    private static final LocalDate DAY = LocalDate.of(2025, 10, 10);
    private static final MilkingShares LEARNED = MilkingShares.ofSums(600, 1000, 20, 0.5);

    private static MilkedDay day(int perDay, Milking... milkings) {
        return new MilkedDay(DAY, perDay, List.of(milkings), OptionalInt.empty());
    }

    private static TestDay only(List<TestDay> posted, MilkedDay day, MilkingShares shares) {
        List<TestDay> all = DaysFromMilkings.beside(posted, List.of(day), shares);
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    private static List<FindingCode> codes(TestDay test) {
        return test.notes().stream().map(Finding::code).toList();
    }

    @Test
    void allMilkingsOfADayAreAddedUp() {
        TestDay test = only(List.of(), day(2, Milking.of(Session.AM, 15.5), Milking.of(Session.PM, 11.5)), LEARNED);
        assertThat(test.milkKg().orElseThrow()).isCloseTo(27, within(1e-12));
        assertThat(test.addedVarianceShare()).isZero();
        assertThat(codes(test)).contains(FindingCode.SUMMED_FROM_MILKINGS);
    }

    @Test
    void aPartOfADayTakesTheLearnedShareAndMoreVariance() {
        TestDay test = only(List.of(), day(2, Milking.of(Session.PM, 9)), LEARNED);
        // share of the morning (20 x 0.6 + 20 x 0.5) / 40 = 0.55
        assertThat(test.milkKg().orElseThrow()).isCloseTo(9 / 0.45, within(1e-12));
        // VanRaden, reference note Data collection rating: 0.30 for one of two, as in AddedTestVariance
        assertThat(test.addedVarianceShare()).isEqualTo(0.30);
        assertThat(codes(test)).contains(FindingCode.PART_OF_DAY_WEIGHED);
    }

    @Test
    void withoutPairedDaysAPartOfADayTakesNoPart() {
        MilkingShares few = MilkingShares.ofSums(570, 950, 19, 0.5);
        TestDay test = only(List.of(), day(2, Milking.of(Session.AM, 15)), few);
        assertThat(test.milkKg()).isEmpty();
        assertThat(codes(test)).containsExactly(FindingCode.MILKINGS_NOT_SUMMED);
    }

    @Test
    void aPostedWeightWinsAndAPostedSampleTakesTheSum() {
        MilkedDay both = day(2, Milking.of(Session.AM, 15.5), Milking.of(Session.PM, 11.5));
        TestDay weighed = only(List.of(TestDay.ofMilk(DAY, 28)), both, LEARNED);
        assertThat(weighed.milkKg()).hasValue(28);
        assertThat(codes(weighed)).containsExactly(FindingCode.POSTED_TEST_DAY_WINS);
        java.util.OptionalDouble none = java.util.OptionalDouble.empty();
        TestDay sampled = only(List.of(new TestDay(DAY, none, none, none, none, none).withFatPct(4.1)), both, LEARNED);
        assertThat(sampled.milkKg()).hasValue(27);
        assertThat(sampled.fatPct()).hasValue(4.1);
        assertThat(codes(sampled)).contains(FindingCode.MILK_FROM_MILKINGS);
    }

    @Test
    void sharesFromSumsAreThoseFromDays() {
        List<MilkedDay> days = List.of(
                day(2, Milking.of(Session.AM, 15), Milking.of(Session.PM, 10)),
                day(2, Milking.of(Session.AM, 12), Milking.of(Session.PM, 9)));
        assertThat(MilkingShares.ofSums(27, 46, 2, 0.52).amShare())
                .isCloseTo(MilkingShares.learn(days, 0.52).amShare(), within(1e-15));
    }

    @Test
    void aJumpIsNamedWithinALactationAndNotOverACalving() {
        List<TestDay> tests = List.of(TestDay.ofMilk(DAY, 30), TestDay.ofMilk(DAY.plusDays(30), 17.9));
        assertThat(codes(OddTestDays.named(tests, List.of(), BreedGroup.UNKNOWN, DatedLimits.PUBLISHED)
                        .get(1)))
                .containsExactly(FindingCode.MILK_CHANGE);
        assertThat(codes(OddTestDays.named(tests, List.of(DAY.plusDays(10)), BreedGroup.UNKNOWN, DatedLimits.PUBLISHED)
                        .get(1)))
                .isEmpty();
        List<TestDay> smaller = List.of(TestDay.ofMilk(DAY, 30), TestDay.ofMilk(DAY.plusDays(30), 18.1));
        assertThat(codes(OddTestDays.named(smaller, List.of(), BreedGroup.UNKNOWN, DatedLimits.PUBLISHED)
                        .get(1)))
                .isEmpty();
        List<TestDay> farApart = List.of(TestDay.ofMilk(DAY, 30), TestDay.ofMilk(DAY.plusDays(76), 10));
        assertThat(codes(OddTestDays.named(farApart, List.of(), BreedGroup.UNKNOWN, DatedLimits.PUBLISHED)
                        .get(1)))
                .isEmpty();
    }
}
