package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.breeding.BreedingRecord.State;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.breeding.Pregnancy.Known;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.BreedingDecision;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.lactation.event.PregnancyCheck.Result;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/** Cows walked through by hand, day by day; the days of the lists are common practice or as cited in {@link BreedingList}. */
class BreedingWorklistPublishedTest {
    private static final LocalDate CALVED = LocalDate.of(2026, 1, 1);
    private static final BreedingHistory COW =
            BreedingHistory.NONE.withBreed("HOL").withCalvings(List.of(Calving.on(CALVED)));
    private static final BreedingWorklist LISTS = BreedingWorklist.with(BreedingSettings.USUAL.withWaitingDays(50));

    private static BreedingHistory served(int... days) {
        return COW.withInseminations(Arrays.stream(days)
                .mapToObj(day -> Insemination.on(CALVED.plusDays(day)))
                .toList());
    }

    private static PregnancyCheck check(int day, Result result) {
        return PregnancyCheck.of(CALVED.plusDays(day), result);
    }

    private static BreedingRecord on(int day, BreedingHistory history) {
        return BreedingRecord.of("cow", history, CALVED.plusDays(day));
    }

    private static List<BreedingList> lists(int day, BreedingHistory history) {
        return LISTS.ofCow(on(day, history)).stream().map(ListedCow::list).toList();
    }

    @Test
    void aFreshCowComesOnTheListWhenTheWaitingPeriodEnds() {
        assertThat(lists(49, COW)).isEmpty();
        assertThat(lists(50, COW)).containsExactly(BreedingList.TO_BREED);
        assertThat(lists(80, COW)).containsExactly(BreedingList.TO_BREED);
        assertThat(lists(81, COW)).containsExactly(BreedingList.TO_BREED, BreedingList.NOT_YET_SERVED_LATE);
        assertThat(LISTS.ofCow(on(50, COW)).get(0).why())
                .isEqualTo("Calved 2026-01-01, 50 days ago (waiting period 50 days); not served since.");
        assertThat(lists(60, COW.withDepartures(List.of(new Departure(CALVED.plusDays(55))))))
                .isEmpty();
    }

    @Test
    void aCowMarkedNotToBeBredIsOnNoListToServeHerUntilTheFarmSaysOtherwise() {
        BreedingHistory cow =
                COW.withDecisions(List.of(BreedingDecision.notToBreed(CALVED.plusDays(55), "third mastitis")));
        assertThat(lists(54, cow)).containsExactly(BreedingList.TO_BREED);
        assertThat(lists(60, cow)).containsExactly(BreedingList.NOT_TO_BREED);
        ListedCow listed = LISTS.ofCow(on(100, cow)).get(0);
        assertThat(listed.day()).isEqualTo(CALVED.plusDays(55));
        assertThat(listed.why()).isEqualTo("Not to be bred since 2026-02-25, by the farm's choice: third mastitis.");
        BreedingHistory again = cow.withDecisions(List.of(
                BreedingDecision.notToBreed(CALVED.plusDays(55), "third mastitis"),
                BreedingDecision.breedAgain(CALVED.plusDays(90))));
        assertThat(lists(89, again)).containsExactly(BreedingList.NOT_TO_BREED);
        assertThat(lists(90, again)).containsExactly(BreedingList.TO_BREED, BreedingList.NOT_YET_SERVED_LATE);
        // the choice holds over a calving: it was hers to be the last
        BreedingHistory calved = cow.withCalvings(List.of(Calving.on(CALVED), Calving.on(CALVED.plusDays(400))));
        assertThat(lists(460, calved)).containsExactly(BreedingList.NOT_TO_BREED);
    }

    @Test
    void aServedCowIsWatchedAfter18DaysAndCheckedAfter35() {
        BreedingHistory cow = served(60);
        assertThat(on(60, cow).state()).isEqualTo(State.SERVED);
        assertThat(lists(77, cow)).isEmpty();
        assertThat(lists(78, cow)).containsExactly(BreedingList.TO_BREED, BreedingList.WATCH_FOR_RETURN);
        assertThat(lists(84, cow)).contains(BreedingList.WATCH_FOR_RETURN);
        assertThat(lists(85, cow)).containsExactly(BreedingList.TO_BREED);
        assertThat(lists(94, cow)).containsExactly(BreedingList.TO_BREED);
        assertThat(lists(95, cow)).containsExactly(BreedingList.TO_BREED, BreedingList.TO_CHECK);
        assertThat(LISTS.ofCow(on(95, cow)).get(0).why()).contains("make sure she is open before she is served again");
    }

    @Test
    void aCowFoundPregnantIsRecheckedDriedOffAndCalves() {
        BreedingHistory cow = served(60, 81).withChecks(List.of(check(120, Result.PREGNANT)));
        BreedingRecord found = on(120, cow);
        assertThat(found.state()).isEqualTo(State.PREGNANT);
        Pregnancy pregnancy = found.now().goingOn().orElseThrow();
        assertThat(pregnancy.conception()).hasValue(CALVED.plusDays(81));
        assertThat(pregnancy.known()).isEqualTo(Known.SERVICE);
        assertThat(found.now().services())
                .extracting(CountedService::outcome)
                .containsExactly(Outcome.OPEN, Outcome.PREGNANT);
        assertThat(lists(120, cow)).isEmpty();
        assertThat(lists(141, cow)).containsExactly(BreedingList.RECHECK);
        assertThat(lists(172, cow)).isEmpty();
        // conceived on day 81 and 279 days: due on day 360, dry on day 300
        ExpectedCalving expected = found.expectedCalving().orElseThrow();
        assertThat(expected.due()).isEqualTo(CALVED.plusDays(360));
        assertThat(expected.gestationDays()).isEqualTo(279);
        assertThat(expected.findings()).isEmpty();
        assertThat(lists(285, cow)).isEmpty();
        assertThat(lists(286, cow)).containsExactly(BreedingList.DUE_TO_DRY_OFF);
        BreedingHistory dry = cow.withDryOffs(List.of(new DryOff(CALVED.plusDays(300))));
        assertThat(lists(330, dry)).isEmpty();
        assertThat(lists(339, dry)).containsExactly(BreedingList.DUE_TO_CALVE);
        BreedingHistory calved = dry.withCalvings(List.of(Calving.on(CALVED), Calving.on(CALVED.plusDays(362))));
        assertThat(lists(363, calved)).isEmpty();
        BreedingPeriod before = on(363, calved).periods().get(1);
        assertThat(before.pregnancies()).singleElement().satisfies(one -> {
            assertThat(one.calvedOn()).hasValue(CALVED.plusDays(362));
            assertThat(one.known()).isEqualTo(Known.SERVICE);
        });
    }

    @Test
    void theAgeTheVeterinarianPutsOutranksTheLastService() {
        BreedingHistory cow = served(60, 90)
                .withChecks(List.of(new PregnancyCheck(CALVED.plusDays(125), Result.PREGNANT, OptionalInt.of(63))));
        assertThat(on(125, cow).now().goingOn().orElseThrow().conception()).hasValue(CALVED.plusDays(60));
        assertThat(on(125, cow).now().services())
                .extracting(CountedService::outcome)
                .containsExactly(Outcome.PREGNANT, Outcome.WHILE_PREGNANT);
        BreedingHistory bull =
                COW.withChecks(List.of(new PregnancyCheck(CALVED.plusDays(125), Result.PREGNANT, OptionalInt.of(50))));
        Pregnancy byBull = on(125, bull).now().goingOn().orElseThrow();
        assertThat(byBull.conception()).hasValue(CALVED.plusDays(75));
        assertThat(byBull.known()).isEqualTo(Known.AGE_AT_CHECK);
        BreedingRecord unknown = on(125, COW.withChecks(List.of(check(125, Result.PREGNANT))));
        assertThat(unknown.state()).isEqualTo(State.PREGNANT);
        assertThat(unknown.expectedCalving()).isEmpty();
        assertThat(unknown.findings()).extracting(Finding::code).containsExactly(FindingCode.CONCEPTION_DATE_UNKNOWN);
    }

    @Test
    void aCheckTooSoonAfterAServiceSaysNothingOfIt() {
        // found open on day 70: the service of day 60 may still take
        BreedingHistory cow = served(60).withChecks(List.of(check(70, Result.OPEN)));
        assertThat(on(75, cow).state()).isEqualTo(State.SERVED);
        BreedingHistory later = served(60).withChecks(List.of(check(78, Result.OPEN)));
        assertThat(on(78, later).state()).isEqualTo(State.OPEN);
        assertThat(lists(78, later)).containsExactly(BreedingList.TO_BREED);
        // a doubtful check changes nothing
        assertThat(on(95, served(60).withChecks(List.of(check(94, Result.DOUBTFUL))))
                        .state())
                .isEqualTo(State.SERVED);
    }

    @Test
    void threeServicesFoundOpenMakeARepeatBreeder() {
        BreedingHistory cow = served(60, 81, 102);
        assertThat(lists(130, cow)).doesNotContain(BreedingList.REPEAT_BREEDER);
        BreedingHistory open = cow.withChecks(List.of(check(140, Result.OPEN)));
        assertThat(lists(140, open)).containsExactly(BreedingList.TO_BREED, BreedingList.REPEAT_BREEDER);
    }

    @Test
    void inseminationsWithinThreeDaysAreOneService() {
        BreedingRecord cow = on(100, served(60, 62, 90));
        assertThat(cow.now().services()).hasSize(2);
        assertThat(cow.now().services().get(0).firstDate()).isEqualTo(CALVED.plusDays(60));
        assertThat(cow.now().services().get(0).date()).isEqualTo(CALVED.plusDays(62));
    }

    @Test
    void aPregnantCowServedAgainIsToBeCheckedAndNotToBeBred() {
        BreedingHistory cow = served(60, 130).withChecks(List.of(check(100, Result.PREGNANT)));
        BreedingRecord doubted = on(131, cow);
        assertThat(doubted.state()).isEqualTo(State.PREGNANT);
        assertThat(doubted.findings()).extracting(Finding::code).containsExactly(FindingCode.SERVED_WHILE_PREGNANT);
        assertThat(lists(131, cow)).containsExactly(BreedingList.RECHECK);
        // found open: lost when heat was seen, and the new service is on its own
        BreedingHistory open = cow.withChecks(List.of(check(100, Result.PREGNANT), check(140, Result.OPEN)));
        assertThat(on(140, open).now().pregnancies().get(0).lostOn()).hasValue(CALVED.plusDays(130));
        assertThat(on(140, open).state()).isEqualTo(State.SERVED);
        // an age that fits the new service makes it another pregnancy
        BreedingHistory another = cow.withChecks(List.of(
                check(100, Result.PREGNANT),
                new PregnancyCheck(CALVED.plusDays(170), Result.PREGNANT, OptionalInt.of(40))));
        assertThat(on(170, another).now().pregnancies()).hasSize(2);
        assertThat(on(170, another).now().goingOn().orElseThrow().conception()).hasValue(CALVED.plusDays(130));
    }

    @Test
    void anAbortionEndsThePregnancyAndACalvingTellsOfOneNobodyFound() {
        BreedingHistory aborted = served(60)
                .withChecks(List.of(check(100, Result.PREGNANT)))
                .withAbortions(List.of(new Abortion(CALVED.plusDays(150), OptionalInt.empty(), false)));
        assertThat(on(150, aborted).state()).isEqualTo(State.OPEN);
        assertThat(on(150, aborted).now().pregnancies().get(0).lostOn()).hasValue(CALVED.plusDays(150));
        BreedingHistory calved =
                served(60, 85).withCalvings(List.of(Calving.on(CALVED), Calving.on(CALVED.plusDays(365))));
        BreedingRecord after = on(366, calved);
        assertThat(after.periods().get(1).pregnancies()).singleElement().satisfies(one -> {
            assertThat(one.conception()).hasValue(CALVED.plusDays(85));
            assertThat(one.known()).isEqualTo(Known.INFERRED);
        });
        assertThat(after.findings()).extracting(Finding::code).containsExactly(FindingCode.CONCEPTION_INFERRED);
    }

    @Test
    void aServedHeiferIsWatchedCheckedAndExpected() {
        BreedingHistory heifer = BreedingHistory.NONE
                .withBreed("HOL")
                .withInseminations(List.of(Insemination.on(CALVED)))
                .withChecks(List.of(check(40, Result.PREGNANT)));
        assertThat(lists(20, heifer)).containsExactly(BreedingList.WATCH_FOR_RETURN);
        assertThat(on(100, heifer).expectedCalving().orElseThrow().due()).isEqualTo(CALVED.plusDays(278));
        assertThat(lists(270, heifer)).containsExactly(BreedingList.DUE_TO_CALVE);
    }
}
