package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.breeding.BreedingRecord.State;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.BreedingDecision;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

class BreedingRecordLawTest {
    private static final long SEED = 51;
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

    /** Random but possible lives, mistakes included. */
    private static List<BreedingHistory> herd(int cows) {
        Random random = new Random(SEED);
        List<BreedingHistory> herd = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            List<Calving> calvings = new ArrayList<>();
            List<Insemination> services = new ArrayList<>();
            List<PregnancyCheck> checks = new ArrayList<>();
            List<Abortion> abortions = new ArrayList<>();
            List<DryOff> dryOffs = new ArrayList<>();
            List<Departure> departures = new ArrayList<>();
            LocalDate day = TODAY.minusDays(random.nextInt(900));
            while (day.isBefore(TODAY.plusDays(100))) {
                calvings.add(Calving.on(day));
                LocalDate service = day.plusDays(20 + random.nextInt(80));
                int tries = random.nextInt(5);
                for (int s = 0; s < tries; s++) {
                    services.add(Insemination.on(service));
                    if (random.nextInt(3) == 0) {
                        checks.add(PregnancyCheck.of(
                                service.plusDays(10 + random.nextInt(40)),
                                PregnancyCheck.Result.values()[random.nextInt(3)]));
                    }
                    service = service.plusDays(1 + random.nextInt(50));
                }
                if (random.nextInt(10) == 0) {
                    abortions.add(new Abortion(service.plusDays(20), OptionalInt.empty(), random.nextBoolean()));
                }
                if (random.nextInt(3) == 0) {
                    dryOffs.add(new DryOff(day.plusDays(300)));
                }
                if (random.nextInt(8) == 0) {
                    departures.add(new Departure(day.plusDays(random.nextInt(400))));
                }
                day = day.plusDays(330 + random.nextInt(150));
            }
            BreedingHistory history = BreedingHistory.NONE
                    .withBreed(random.nextBoolean() ? "HOL" : "")
                    .withCalvings(calvings)
                    .withInseminations(services)
                    .withChecks(checks)
                    .withAbortions(abortions)
                    .withDryOffs(dryOffs)
                    .withDepartures(departures);
            herd.add(
                    random.nextInt(6) == 0
                            ? history.withDecisions(List.of(
                                    BreedingDecision.notToBreed(day.minusDays(random.nextInt(500)), "low milk")))
                            : history);
        }
        return herd;
    }

    private static List<BreedingRecord> records(List<BreedingHistory> herd, LocalDate asOf) {
        List<BreedingRecord> records = new ArrayList<>();
        for (int i = 0; i < herd.size(); i++) {
            records.add(BreedingRecord.of("cow " + i, herd.get(i), asOf));
        }
        return records;
    }

    private static Set<String> on(BreedingList list, List<BreedingRecord> cows, BreedingSettings settings) {
        return BreedingWorklist.with(settings).of(cows).stream()
                .filter(listed -> listed.list() == list)
                .map(listed -> listed.cow().animal())
                .collect(Collectors.toSet());
    }

    @Test
    void aLongerWaitingPeriodNeverPutsACowOnTheListToBreed() {
        List<BreedingRecord> cows = records(herd(300), TODAY);
        for (BreedingList list : List.of(BreedingList.TO_BREED, BreedingList.NOT_YET_SERVED_LATE)) {
            Set<String> before = on(list, cows, BreedingSettings.USUAL.withWaitingDays(20));
            assertThat(before).as("seed " + SEED).isNotEmpty();
            for (int days = 21; days <= 200; days++) {
                Set<String> now = on(list, cows, BreedingSettings.USUAL.withWaitingDays(days));
                assertThat(before).as("seed " + SEED + ", " + days + " days").containsAll(now);
                before = now;
            }
        }
    }

    @Test
    void aLaterCheckDayNeverEnlargesTheListToCheck() {
        List<BreedingRecord> cows = records(herd(300), TODAY);
        Set<String> early = on(BreedingList.TO_CHECK, cows, BreedingSettings.USUAL.withCheckDays(28));
        assertThat(early).isNotEmpty();
        assertThat(early).containsAll(on(BreedingList.TO_CHECK, cows, BreedingSettings.USUAL.withCheckDays(35)));
    }

    @Test
    void theOrderOfEntryAndARecordSentAgainChangeNothing() {
        for (BreedingHistory history : herd(200)) {
            List<Insemination> services = new ArrayList<>(history.inseminations());
            services.addAll(history.inseminations());
            Collections.shuffle(services, new Random(SEED));
            List<PregnancyCheck> checks = new ArrayList<>(history.checks());
            checks.addAll(history.checks());
            Collections.reverse(checks);
            List<Calving> calvings = new ArrayList<>(history.calvings());
            calvings.addAll(history.calvings());
            BreedingHistory again =
                    history.withInseminations(services).withChecks(checks).withCalvings(calvings);
            assertThat(BreedingRecord.of("cow", again, TODAY))
                    .as("seed " + SEED)
                    .isEqualTo(BreedingRecord.of("cow", history, TODAY));
        }
    }

    @Test
    void whatHappensLaterTakesNoPart() {
        for (BreedingHistory history : herd(200)) {
            LocalDate before = TODAY.minusDays(120);
            assertThat(BreedingRecord.of("cow", history, before))
                    .as("seed " + SEED)
                    .isEqualTo(BreedingRecord.of("cow", history.asOf(before), before));
        }
    }

    @Test
    void everyCowIsInOneStateAndHerListsFitIt() {
        for (BreedingRecord cow : records(herd(400), TODAY)) {
            Set<BreedingList> lists = BreedingWorklist.with(BreedingSettings.USUAL).ofCow(cow).stream()
                    .map(ListedCow::list)
                    .collect(Collectors.toSet());
            if (cow.state() == State.LEFT) {
                assertThat(lists).as("seed " + SEED).isEmpty();
            }
            if (cow.state() == State.PREGNANT) {
                assertThat(lists)
                        .as("seed " + SEED)
                        .doesNotContain(BreedingList.TO_BREED, BreedingList.TO_CHECK, BreedingList.REPEAT_BREEDER);
            }
            if (cow.now().notToBeBred().isPresent()) {
                assertThat(lists).doesNotContain(BreedingList.TO_BREED);
            }
            for (BreedingPeriod period : cow.periods()) {
                long conceptions = period.services().stream()
                        .filter(service -> service.outcome() == Outcome.PREGNANT)
                        .count();
                assertThat(conceptions)
                        .as("seed " + SEED)
                        .isLessThanOrEqualTo(period.pregnancies().size());
                // only the last pregnancy of a period may go on
                assertThat(period.pregnancies().stream()
                                .filter(Pregnancy::goesOn)
                                .count())
                        .isLessThanOrEqualTo(1);
            }
        }
    }

    @Test
    void onceSheCalvedEveryServiceBeforeHasAnOutcome() {
        int calvings = 0;
        for (BreedingHistory history : herd(300)) {
            for (BreedingPeriod period : BreedingRecord.of("cow", history.withAbortions(List.of()), TODAY)
                    .periods()) {
                if (period.nextCalving().isPresent() && !period.services().isEmpty()) {
                    calvings++;
                    assertThat(period.services())
                            .as("seed " + SEED)
                            .noneMatch(service -> service.outcome() == Outcome.UNKNOWN);
                    assertThat(period.pregnancies())
                            .as("seed " + SEED)
                            .last()
                            .extracting(Pregnancy::calvedOn)
                            .isEqualTo(period.nextCalving());
                }
            }
        }
        assertThat(calvings).isGreaterThan(20);
    }

    @Test
    void everyShareIsAShareAndThePregnantAreAmongTheEligible() {
        List<BreedingRecord> cows = records(herd(400), TODAY);
        BreedingSummary summary = BreedingSummary.of(cows, BreedingSettings.USUAL, TODAY);
        List<Measured> shares = new ArrayList<>(List.of(
                summary.cycles().pregnancyRateOfYear(),
                summary.cycles().inseminationRiskOfYear(),
                summary.outcomes().conceptionRisk(),
                summary.outcomes().pregnancyLoss()));
        for (PregnancyRate21.Cycle cycle : summary.cycles().cycles()) {
            assertThat(cycle.pregnant() + cycle.pending()).isLessThanOrEqualTo(cycle.eligible());
            assertThat(cycle.served()).isLessThanOrEqualTo(cycle.eligible());
            assertThat(cycle.cowDays()).isLessThanOrEqualTo(21 * cows.size());
            shares.add(summary.cycles().pregnancyRate(cycle));
        }
        int values = 0;
        for (Measured share : shares) {
            if (share.figure().value().isPresent()) {
                values++;
                assertThat(share.figure().orThrow()).as("seed " + SEED).isBetween(0.0, 100.0);
                assertThat(share.figure().orThrow())
                        .isCloseTo(100 * share.numerator() / share.denominator(), within(1e-9));
            }
        }
        assertThat(values).isGreaterThan(3);
        double before = 1;
        for (TimeToPregnancy.Step step : summary.intervals().timeToPregnancy().steps()) {
            assertThat(step.stillOpenShare()).isBetween(0.0, before);
            before = step.stillOpenShare();
        }
    }

    @Test
    void anEmptyHerdHasNoFiguresAndSaysWhatIsLacking() {
        BreedingSummary empty = BreedingSummary.of(List.of(), BreedingSettings.USUAL, TODAY);
        assertThat(empty.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.WAITING_PERIOD_ASSUMED, FindingCode.SERVICES_NEEDED);
        assertThat(empty.cycles().pregnancyRateOfYear().figure().value()).isEmpty();
        assertThat(empty.intervals().timeToPregnancy().median().value()).isEmpty();
        assertThat(BreedingWorklist.with(BreedingSettings.USUAL).of(List.of())).isEmpty();
    }

    @Test
    void servicesWithoutAnyOutcomeGiveAnInseminationRiskAndNoPregnancyRate() {
        BreedingHistory cow = BreedingHistory.NONE
                .withCalvings(List.of(Calving.on(TODAY.minusDays(120))))
                .withInseminations(List.of(Insemination.on(TODAY.minusDays(30))));
        BreedingSummary summary = BreedingSummary.of(
                List.of(BreedingRecord.of("cow", cow, TODAY)), BreedingSettings.USUAL.withWaitingDays(60), TODAY);
        assertThat(summary.findings()).extracting(Finding::code).containsExactly(FindingCode.PREGNANCY_CHECKS_NEEDED);
        assertThat(summary.cycles().inseminationRiskOfYear().figure().value()).isPresent();
        assertThat(summary.cycles().pregnancyRateOfYear().figure().findings())
                .extracting(Finding::code)
                .contains(FindingCode.PREGNANCY_CHECKS_NEEDED);
    }
}
