package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.AssembledLactation.End;
import org.pailbook.lactation.testday.AssemblyRules.MissingDryOff;

/** Our rules for lactations, worked case by case; where a rule is not ours its source stands beside the check. */
class LactationAssemblyPublishedTest {
    private static final LocalDate FIRST = LocalDate.of(2021, 2, 1);
    private static final LocalDate SECOND = LocalDate.of(2022, 3, 1);
    private static final LocalDate TODAY = LocalDate.of(2022, 12, 31);

    private static CowLactations assemble(CowHistory.Builder history) {
        return LactationAssembly.ofOurRules().assemble(history.build(), TODAY);
    }

    private static CowHistory.Builder twoCalvings() {
        return CowHistory.builder().calving(parity(FIRST, 1)).calving(parity(SECOND, 2));
    }

    private static Calving parity(LocalDate date, int parity) {
        return new Calving(date, OptionalInt.of(parity));
    }

    private static TestDay test(LocalDate date) {
        return TestDay.ofMilk(date, 25);
    }

    private static List<FindingCode> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).toList();
    }

    @Test
    void aLactationRunsFromCalvingToDryOffAndTheNextToToday() {
        // ICAR wiki, Section 02: calving to dry-off or culling, possibly incomplete
        CowLactations cow = assemble(twoCalvings()
                .dryOff(new DryOff(LocalDate.of(2022, 1, 5)))
                .testDays(List.of(test(FIRST.plusDays(20)), test(SECOND.plusDays(10)))));
        AssembledLactation first = cow.lactations().get(0);
        AssembledLactation second = cow.lactations().get(1);
        assertThat(first.lactation().endDate()).hasValue(LocalDate.of(2022, 1, 5));
        assertThat(first.lactation().isEndEstimated()).isFalse();
        assertThat(first.end()).isEqualTo(End.DRIED_OFF);
        assertThat(first.lastDate()).hasValue(SECOND.minusDays(1));
        assertThat(first.lactation().testDays()).hasSize(1);
        assertThat(second.end()).isEqualTo(End.IN_MILK);
        assertThat(second.lactation().endDate()).isEmpty();
        assertThat(second.lastDate()).isEmpty();
        assertThat(first.findings()).isEmpty();
        assertThat(second.findings()).isEmpty();
        assertThat(cow.findings()).isEmpty();
        assertThat(cow.latest()).hasValue(second);
        assertThat(cow.ofParity(1)).hasValue(first);
        assertThat(cow.ofParity(7)).isEmpty();
    }

    @Test
    void aMissingDryOffIsEstimatedFromTheTestsAndFlagged() {
        CowLactations cow = assemble(twoCalvings()
                .testDays(List.of(test(FIRST.plusDays(240)), test(FIRST.plusDays(268)), test(SECOND.plusDays(9)))));
        AssembledLactation first = cow.lactations().get(0);
        assertThat(first.lactation().endDate()).hasValue(FIRST.plusDays(268 + 14));
        assertThat(first.lactation().isEndEstimated()).isTrue();
        assertThat(first.end()).isEqualTo(End.NOT_RECORDED);
        assertThat(first.lastDate()).hasValue(SECOND.minusDays(1));
        assertThat(codes(first.findings())).containsExactly(FindingCode.ESTIMATED_END, FindingCode.DRY_OFF_MISSING);
    }

    @Test
    void theEstimateNeverReachesTheNextCalving() {
        CowLactations cow =
                assemble(twoCalvings().testDays(List.of(test(SECOND.minusDays(30)), test(SECOND.minusDays(5)))));
        assertThat(cow.lactations().get(0).lactation().endDate()).hasValue(SECOND.minusDays(1));
        assertThat(cow.lactations().get(0).lactation().testDays()).hasSize(2);
        CowLactations without = assemble(twoCalvings());
        assertThat(without.lactations().get(0).lactation().endDate()).hasValue(SECOND.minusDays(1));
    }

    @Test
    void byTheOtherRuleAMissingDryOffMeansNoDryPeriod() {
        CowHistory history = twoCalvings().testDay(test(FIRST.plusDays(240))).build();
        AssemblyRules rules = AssemblyRules.OURS.withMissingDryOff(MissingDryOff.DAY_BEFORE_CALVING);
        AssembledLactation first = LactationAssembly.by(rules, DatedLimits.PUBLISHED)
                .assemble(history, TODAY)
                .lactations()
                .get(0);
        assertThat(first.lactation().endDate()).hasValue(SECOND.minusDays(1));
        assertThat(first.lactation().isEndEstimated()).isTrue();
        assertThat(codes(first.findings())).containsExactly(FindingCode.DRY_OFF_MISSING);
    }

    @Test
    void aDryOffOnTheCalvingDayEndsTheOldLactationTheDayBefore() {
        AssembledLactation first =
                assemble(twoCalvings().dryOff(new DryOff(SECOND))).lactations().get(0);
        assertThat(first.lactation().endDate()).hasValue(SECOND.minusDays(1));
        assertThat(first.end()).isEqualTo(End.DRIED_OFF);
    }

    @Test
    void ofSeveralDryOffsTheLastCountsAndTheOthersAreNamed() {
        AssembledLactation first = assemble(
                        twoCalvings().dryOff(new DryOff(FIRST.plusDays(300))).dryOff(new DryOff(FIRST.plusDays(280))))
                .lactations()
                .get(0);
        assertThat(first.lactation().endDate()).hasValue(FIRST.plusDays(300));
        assertThat(codes(first.findings())).containsExactly(FindingCode.DRY_OFF_REPEATED);
        assertThat(first.findings().get(0).date()).hasValue(FIRST.plusDays(280));
    }

    @Test
    void twoCalvingsWithinAMonthAreOneAndAreTold() {
        CowLactations cow = assemble(CowHistory.builder()
                .calving(Calving.on(FIRST.plusDays(29)))
                .calving(parity(FIRST, 3))
                .calving(parity(FIRST, 3)));
        assertThat(cow.lactations()).hasSize(1);
        assertThat(cow.lactations().get(0).lactation().calvingDate()).isEqualTo(FIRST);
        assertThat(cow.lactations().get(0).lactation().parity()).isEqualTo(3);
        assertThat(codes(cow.lactations().get(0).findings()))
                .containsExactly(FindingCode.DUPLICATE_CALVING, FindingCode.DUPLICATE_CALVING);
    }

    @Test
    void twoCalvingsThirtyDaysApartAreTwoAndAreQuestioned() {
        CowLactations cow =
                assemble(CowHistory.builder().calving(parity(FIRST, 1)).calving(parity(FIRST.plusDays(30), 2)));
        assertThat(cow.lactations()).hasSize(2);
        // shorter than a gestation, 270 d; ours
        Finding finding = cow.lactations().get(1).findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.IMPLAUSIBLE);
        assertThat(finding.field()).hasValue("calvingIntervalDays");
        assertThat(finding.seen()).hasValue("30.0 d");
    }

    @Test
    void oneOfTwoEntriesOfACalvingMayHoldTheParity() {
        CowLactations cow =
                assemble(CowHistory.builder().calving(Calving.on(FIRST)).calving(parity(FIRST.plusDays(1), 4)));
        assertThat(cow.lactations().get(0).lactation().parity()).isEqualTo(4);
        CowLactations contradicting =
                assemble(CowHistory.builder().calving(parity(FIRST, 2)).calving(parity(FIRST, 4)));
        assertThat(contradicting.lactations().get(0).lactation().parity()).isEqualTo(2);
        assertThat(codes(contradicting.lactations().get(0).findings()))
                .contains(FindingCode.PARITY_CONTRADICTS, FindingCode.DUPLICATE_CALVING);
        CowLactations agreeing =
                assemble(CowHistory.builder().calving(parity(FIRST, 4)).calving(parity(FIRST, 4)));
        assertThat(codes(agreeing.lactations().get(0).findings())).containsExactly(FindingCode.DUPLICATE_CALVING);
    }

    @Test
    void withoutAnyParityOnRecordTheFirstCalvingKnownIsTheFirst() {
        CowLactations cow =
                assemble(CowHistory.builder().calving(Calving.on(SECOND)).calving(Calving.on(FIRST)));
        assertThat(cow.lactations())
                .extracting(assembled -> assembled.lactation().parity())
                .containsExactly(1, 2);
        assertThat(codes(cow.lactations().get(0).findings())).contains(FindingCode.PARITY_COUNTED);
        assertThat(codes(cow.lactations().get(1).findings())).doesNotContain(FindingCode.PARITY_COUNTED);
    }

    @Test
    void parityIsCountedBackFromTheFirstOnRecordAndOnFromIt() {
        LocalDate third = SECOND.plusDays(300);
        CowLactations cow = LactationAssembly.ofOurRules()
                .assemble(
                        CowHistory.builder()
                                .calving(Calving.on(FIRST))
                                .calving(parity(SECOND, 4))
                                .calving(Calving.on(third))
                                .build(),
                        third);
        assertThat(cow.lactations())
                .extracting(assembled -> assembled.lactation().parity())
                .containsExactly(3, 4, 5);
        assertThat(cow.lactations())
                .allSatisfy(assembled -> assertThat(codes(assembled.findings()))
                        .doesNotContain(FindingCode.PARITY_CONTRADICTS, FindingCode.PARITY_COUNTED));
    }

    @Test
    void aRecordedParityAboveTheCountIsBelievedAndOneBelowIsNot() {
        CowLactations jump =
                assemble(CowHistory.builder().calving(parity(FIRST, 1)).calving(parity(SECOND, 3)));
        assertThat(jump.lactations().get(1).lactation().parity()).isEqualTo(3);
        assertThat(jump.lactations().get(1).findings())
                .filteredOn(finding -> finding.code() == FindingCode.PARITY_CONTRADICTS)
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.seen()).hasValue("parity 3");
                    assertThat(finding.expected()).hasValue("parity 2");
                });
        CowLactations back =
                assemble(CowHistory.builder().calving(parity(FIRST, 2)).calving(parity(SECOND, 2)));
        assertThat(back.lactations().get(1).lactation().parity()).isEqualTo(3);
        assertThat(codes(back.lactations().get(1).findings())).contains(FindingCode.PARITY_CONTRADICTS);
    }

    @Test
    void parityIsNeverCountedBackBelowOne() {
        CowLactations cow =
                assemble(CowHistory.builder().calving(Calving.on(FIRST)).calving(parity(SECOND, 1)));
        assertThat(cow.lactations())
                .extracting(assembled -> assembled.lactation().parity())
                .containsExactly(1, 2);
        assertThat(codes(cow.lactations().get(1).findings())).contains(FindingCode.PARITY_CONTRADICTS);
    }

    @Test
    void anAbortionStartsALactationOnlyIfTheFarmOrItsRuleSaysSo() {
        Abortion unsaid = new Abortion(SECOND, OptionalInt.of(220), false);
        Abortion said = new Abortion(SECOND, OptionalInt.empty(), true);
        CowHistory.Builder history = CowHistory.builder().calving(parity(FIRST, 1));
        CowLactations not = assemble(history.abortion(unsaid));
        assertThat(not.lactations()).hasSize(1);
        assertThat(codes(not.findings())).containsExactly(FindingCode.ABORTION_NOT_COUNTED);

        CowLactations counted =
                assemble(CowHistory.builder().calving(parity(FIRST, 1)).abortion(said));
        assertThat(counted.lactations()).hasSize(2);
        assertThat(counted.lactations().get(1).lactation().parity()).isEqualTo(2);
        assertThat(codes(counted.lactations().get(1).findings())).containsExactly(FindingCode.ABORTION_COUNTED);

        // from memory: about three quarters of a term, to be set by the farm
        AssemblyRules national =
                AssemblyRules.OURS.withAbortionCountsFromDaysPregnant(AssemblyRules.THREE_QUARTERS_OF_A_TERM_DAYS);
        LactationAssembly byRule = LactationAssembly.by(national, DatedLimits.PUBLISHED);
        assertThat(byRule.assemble(history.build(), TODAY).lactations()).hasSize(2);
        CowHistory early = CowHistory.builder()
                .calving(parity(FIRST, 1))
                .abortion(new Abortion(SECOND, OptionalInt.of(209), false))
                .build();
        assertThat(byRule.assemble(early, TODAY).lactations()).hasSize(1);
        CowHistory atTheLimit = CowHistory.builder()
                .calving(parity(FIRST, 1))
                .abortion(new Abortion(SECOND, OptionalInt.of(210), false))
                .build();
        assertThat(byRule.assemble(atTheLimit, TODAY).lactations()).hasSize(2);
    }

    @Test
    void departureEndsTheLactationUnlessSheWasDryBefore() {
        AssembledLactation left = assemble(
                        CowHistory.builder().calving(parity(FIRST, 1)).departure(new Departure(FIRST.plusDays(90))))
                .lactations()
                .get(0);
        assertThat(left.end()).isEqualTo(End.LEFT);
        assertThat(left.lactation().endDate()).hasValue(FIRST.plusDays(90));
        AssembledLactation dry = assemble(CowHistory.builder()
                        .calving(parity(FIRST, 1))
                        .dryOff(new DryOff(FIRST.plusDays(90)))
                        .departure(new Departure(FIRST.plusDays(90))))
                .lactations()
                .get(0);
        assertThat(dry.end()).isEqualTo(End.DRIED_OFF);
        assertThat(dry.findings()).isEmpty();
    }

    @Test
    void whatIsOnRecordAfterSheLeftIsKeptAndFlagged() {
        CowLactations cow = assemble(twoCalvings()
                .departure(new Departure(FIRST.plusDays(100)))
                .dryOff(new DryOff(FIRST.plusDays(200)))
                .testDays(List.of(test(FIRST.plusDays(100)), test(FIRST.plusDays(101)))));
        AssembledLactation first = cow.lactations().get(0);
        assertThat(first.end()).isEqualTo(End.LEFT);
        assertThat(first.lactation().endDate()).hasValue(FIRST.plusDays(100));
        assertThat(first.lactation().testDays()).hasSize(2);
        assertThat(first.findings())
                .extracting(finding -> finding.code() + " " + finding.field().orElseThrow() + " "
                        + finding.date().orElseThrow())
                .containsExactly(
                        "EVENT_AFTER_DEPARTURE test-day " + FIRST.plusDays(101),
                        "EVENT_AFTER_DEPARTURE dryOff " + FIRST.plusDays(200),
                        "EVENT_AFTER_DEPARTURE calving " + SECOND);
        assertThat(cow.lactations()).hasSize(2);
    }

    @Test
    void whatComesBeforeTheFirstCalvingIsKeptAndFlagged() {
        CowLactations cow = assemble(CowHistory.builder()
                .calving(parity(FIRST, 1))
                .testDay(test(FIRST.minusDays(1)))
                .testDay(test(FIRST))
                .dryOff(new DryOff(FIRST.minusDays(60)))
                .dryOff(new DryOff(FIRST))
                .departure(new Departure(FIRST.minusDays(400))));
        assertThat(cow.testsBeforeFirstCalving()).extracting(TestDay::date).containsExactly(FIRST.minusDays(1));
        assertThat(cow.lactations().get(0).lactation().testDays()).hasSize(1);
        assertThat(cow.lactations().get(0).end()).isEqualTo(End.IN_MILK);
        assertThat(codes(cow.findings()))
                .containsExactly(
                        FindingCode.EVENT_OUTSIDE_LACTATIONS,
                        FindingCode.EVENT_OUTSIDE_LACTATIONS,
                        FindingCode.TEST_BEFORE_CALVING,
                        FindingCode.EVENT_OUTSIDE_LACTATIONS);
    }

    @Test
    void aCowWithoutACalvingHasNoLactationAndKeepsHerTests() {
        CowLactations cow = assemble(CowHistory.builder().testDay(test(FIRST)));
        assertThat(cow.lactations()).isEmpty();
        assertThat(cow.latest()).isEmpty();
        assertThat(cow.testsBeforeFirstCalving()).hasSize(1);
        assertThat(codes(cow.findings())).containsExactly(FindingCode.NO_CALVING, FindingCode.TEST_BEFORE_CALVING);
    }

    @Test
    void ageAtFirstCalvingIsQuestionedOnlyForTheFirst() {
        // common practice, no source: 18 to 48 months
        CowLactations young =
                assemble(CowHistory.builder().born(FIRST.minusMonths(17)).calving(parity(FIRST, 1)));
        assertThat(young.lactations().get(0).findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.field()).hasValue("ageAtFirstCalvingMonths"));
        assertThat(assemble(CowHistory.builder().born(FIRST.minusMonths(18)).calving(parity(FIRST, 1)))
                        .lactations()
                        .get(0)
                        .findings())
                .isEmpty();
        assertThat(assemble(CowHistory.builder().born(FIRST.minusMonths(60)).calving(parity(FIRST, 3)))
                        .lactations()
                        .get(0)
                        .findings())
                .isEmpty();
    }

    @Test
    void testsBeyondDay1000AreQuestioned() {
        LocalDate late = FIRST.plusDays(1001);
        CowLactations cow = LactationAssembly.ofOurRules()
                .assemble(
                        CowHistory.builder()
                                .calving(parity(FIRST, 1))
                                .testDay(test(late))
                                .build(),
                        late);
        assertThat(cow.lactations().get(0).findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.date()).hasValue(late));
    }

    @Test
    void aDepartureDuringALactationIsNotOutsideOfThem() {
        CowLactations cow = assemble(CowHistory.builder()
                .calving(parity(FIRST, 1))
                .departure(new Departure(FIRST.plusDays(90)))
                .departure(new Departure(FIRST)));
        assertThat(cow.findings()).isEmpty();
        assertThat(cow.lactations().get(0).lactation().endDate()).hasValue(FIRST);
    }

    @Test
    void aLactationAsOfADayKnowsItsEndFromThatDayOn() {
        Lactation estimated =
                Lactation.inMilk(1, FIRST, List.of(test(FIRST.plusDays(20)))).withEstimatedEndDate(FIRST.plusDays(30));
        assertThat(estimated.asOf(FIRST.plusDays(29)).endDate()).isEmpty();
        assertThat(estimated.asOf(FIRST.plusDays(29)).isEndEstimated()).isFalse();
        assertThat(estimated.asOf(FIRST.plusDays(30)).endDate()).hasValue(FIRST.plusDays(30));
        assertThat(estimated.asOf(FIRST.plusDays(30)).isEndEstimated()).isTrue();
        assertThat(estimated.withEndDate(FIRST.plusDays(40)).isEndEstimated()).isFalse();
    }

    @Test
    void laterEventsAreAsIfNotRecorded() {
        CowHistory history = twoCalvings()
                .dryOff(new DryOff(FIRST.plusDays(300)))
                .abortion(new Abortion(SECOND.plusDays(50), OptionalInt.of(50), false))
                .departure(new Departure(SECOND.plusDays(60)))
                .testDay(test(FIRST.plusDays(200)))
                .build();
        CowLactations then = LactationAssembly.ofOurRules().assemble(history, FIRST.plusDays(199));
        assertThat(then.lactations()).hasSize(1);
        assertThat(then.lactations().get(0).end()).isEqualTo(End.IN_MILK);
        assertThat(then.lactations().get(0).lactation().testDays()).isEmpty();
        assertThat(then.asOf()).isEqualTo(FIRST.plusDays(199));
        assertThat(then.findings()).isEmpty();
        assertThat(history.asOf(SECOND.plusDays(49)).abortions()).isEmpty();
        assertThat(history.asOf(SECOND.plusDays(50)).abortions()).hasSize(1);
        assertThat(history.asOf(SECOND.plusDays(59)).departures()).isEmpty();
        assertThat(history.asOf(SECOND.plusDays(60)).departures()).hasSize(1);
        assertThat(history.asOf(FIRST.plusDays(299)).dryOffs()).isEmpty();
        assertThat(history.asOf(SECOND.minusDays(1)).calvings()).hasSize(1);
        assertThat(history.asOf(FIRST.plusDays(200)).testDays()).hasSize(1);
    }

    @Test
    void rulesThatCannotBeAreRefused() {
        assertThatThrownBy(() -> new AssemblyRules(0, OptionalInt.empty(), MissingDryOff.ESTIMATED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Abortion(FIRST, OptionalInt.of(-1), false))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Lactation(1, FIRST, Optional.empty(), true, List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
