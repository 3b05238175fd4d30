package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingRecord.State;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/** Who is to be served, watched, checked, dried off and expected to calve on a day, each with the reason from her own record. */
public final class BreedingWorklist {
    /** To be shown with every list. */
    public static final List<String> CAUTIONS = List.of(
            "A cow nobody checked is neither pregnant nor open. Make sure that a cow served before is open before she is served again.",
            "Abortion, afterbirth kept, abnormal discharge, or returns at odd intervals: ask your veterinarian. Hormones are on prescription only; nothing here proposes one.");

    private static final int CYCLE_EARLY_DAYS = 18;
    private static final int CYCLE_LATE_DAYS = 24;
    private static final int LATE_AFTER_WAITING_DAYS = 30;
    private static final int RECHECK_FROM_DAYS = 60;
    private static final int RECHECK_TO_DAYS = 90;
    private static final int REPEAT_SERVICES = 3;
    private static final int DRY_OFF_AHEAD_DAYS = 14;
    private static final int CALVE_AHEAD_DAYS = 21;

    private final BreedingSettings settings;

    private BreedingWorklist(BreedingSettings settings) {
        this.settings = settings;
    }

    public static BreedingWorklist with(BreedingSettings settings) {
        return new BreedingWorklist(settings);
    }

    /**
     * Every list a herd's cows are on, lists in their order; on the lists to breed the longest in milk first, else the earliest day first.
     *
     * @param cows as they were on the day
     */
    public List<ListedCow> of(List<BreedingRecord> cows) {
        Comparator<ListedCow> byList = Comparator.comparing(ListedCow::list);
        return cows.stream()
                .flatMap(cow -> ofCow(cow).stream())
                .sorted(byList.thenComparing(ListedCow::day)
                        .thenComparing(listed -> listed.cow().animal()))
                .toList();
    }

    /** The lists one cow is on; none once she has left. */
    public List<ListedCow> ofCow(BreedingRecord cow) {
        List<ListedCow> lists = new ArrayList<>();
        State state = cow.state();
        if (state == State.SERVED || state == State.OPEN) {
            openLists(cow, lists);
        }
        if (state == State.SERVED) {
            servedLists(cow, lists);
        }
        if (state == State.PREGNANT) {
            pregnantLists(cow, cow.now().goingOn().orElseThrow(), lists);
        }
        return lists;
    }

    private void openLists(BreedingRecord cow, List<ListedCow> lists) {
        BreedingPeriod now = cow.now();
        boolean mayBeBred = now.notToBeBred().isEmpty();
        now.notToBeBred()
                .ifPresent(time ->
                        lists.add(new ListedCow(cow, BreedingList.NOT_TO_BREED, time.from(), notToBreed(time))));
        if (mayBeBred && now.calving().isPresent()) {
            int days = cow.daysSinceCalving().orElseThrow();
            int since = cow.daysSinceService().orElse(CYCLE_EARLY_DAYS);
            LocalDate from = now.calving().get().plusDays(settings.waitingDays());
            if (days >= settings.waitingDays() && since >= CYCLE_EARLY_DAYS) {
                lists.add(new ListedCow(cow, BreedingList.TO_BREED, from, toBreed(cow, days)));
                if (now.services().isEmpty() && days > settings.waitingDays() + LATE_AFTER_WAITING_DAYS) {
                    lists.add(new ListedCow(
                            cow,
                            BreedingList.NOT_YET_SERVED_LATE,
                            from.plusDays(LATE_AFTER_WAITING_DAYS + 1L),
                            Sentence.of(SentenceCode.NEVER_SERVED, days, from)));
                }
            }
        }
        long open = now.services().stream()
                .filter(service -> service.outcome() == Outcome.OPEN)
                .count();
        if (mayBeBred && open >= REPEAT_SERVICES) {
            lists.add(new ListedCow(
                    cow,
                    BreedingList.REPEAT_BREEDER,
                    now.lastService().orElseThrow().date(),
                    Sentence.of(
                            now.calving().isPresent()
                                    ? SentenceCode.SERVICES_SINCE_CALVING
                                    : SentenceCode.SERVICES_SINCE_THE_FIRST,
                            open)));
        }
    }

    private static Sentence notToBreed(PutAside time) {
        return time.reason().isBlank()
                ? Sentence.of(SentenceCode.NOT_TO_BE_BRED, time.from())
                : Sentence.of(SentenceCode.NOT_TO_BE_BRED_BECAUSE, time.from(), time.reason());
    }

    private Sentence toBreed(BreedingRecord cow, int days) {
        LocalDate calved = cow.now().calving().orElseThrow();
        Optional<CountedService> last = cow.now().lastService();
        if (last.isEmpty()) {
            return Sentence.of(SentenceCode.TO_BREED_NOT_SERVED, calved, days, settings.waitingDays());
        }
        SentenceCode code =
                cow.state() == State.SERVED ? SentenceCode.TO_BREED_OUTCOME_NOT_KNOWN : SentenceCode.TO_BREED_OPEN;
        return Sentence.of(
                code, calved, days, settings.waitingDays(), last.get().date());
    }

    private void servedLists(BreedingRecord cow, List<ListedCow> lists) {
        LocalDate served = cow.now().lastService().orElseThrow().date();
        int since = cow.daysSinceService().orElseThrow();
        Sentence said = Sentence.of(SentenceCode.OUTCOME_NOT_KNOWN, served, since);
        if (since >= CYCLE_EARLY_DAYS && since <= CYCLE_LATE_DAYS) {
            lists.add(new ListedCow(cow, BreedingList.WATCH_FOR_RETURN, served.plusDays(CYCLE_EARLY_DAYS), said));
        }
        if (since >= settings.checkDays()) {
            lists.add(new ListedCow(cow, BreedingList.TO_CHECK, served.plusDays(settings.checkDays()), said));
        }
    }

    private void pregnantLists(BreedingRecord cow, Pregnancy pregnancy, List<ListedCow> lists) {
        LocalDate asOf = cow.asOf();
        if (pregnancy.doubtedOn().isPresent()) {
            lists.add(new ListedCow(
                    cow,
                    BreedingList.RECHECK,
                    pregnancy.doubtedOn().get(),
                    Sentence.of(
                            SentenceCode.PREGNANT_AND_SERVED_AGAIN,
                            pregnancy.confirmedOn().orElse(asOf),
                            pregnancy.doubtedOn().get())));
        } else if (pregnancy.checks() == 1 && pregnancy.conception().isPresent()) {
            LocalDate served = pregnancy.conception().get();
            if (!asOf.isBefore(served.plusDays(RECHECK_FROM_DAYS)) && !asOf.isAfter(served.plusDays(RECHECK_TO_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.RECHECK,
                        served.plusDays(RECHECK_FROM_DAYS),
                        Sentence.of(
                                SentenceCode.PREGNANT_FOUND_ONCE,
                                served,
                                pregnancy.confirmedOn().orElse(asOf))));
            }
        }
        cow.expectedCalving().ifPresent(expected -> {
            LocalDate dryOff = expected.dryOff(settings.dryDays());
            boolean inMilk = cow.now().calving().isPresent() && !cow.isDry();
            if (inMilk && !dryOff.isAfter(asOf.plusDays(DRY_OFF_AHEAD_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.DUE_TO_DRY_OFF,
                        dryOff,
                        Sentence.of(
                                SentenceCode.DUE_TO_DRY_OFF,
                                expected.conception(),
                                expected.due(),
                                settings.dryDays())));
            }
            if (!expected.due().isAfter(asOf.plusDays(CALVE_AHEAD_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.DUE_TO_CALVE,
                        expected.due(),
                        Sentence.of(
                                SentenceCode.DUE_TO_CALVE,
                                expected.conception(),
                                expected.due(),
                                expected.earliest(),
                                expected.latest())));
            }
        });
    }
}
