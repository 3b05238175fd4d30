package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingRecord.State;
import org.pailbook.lactation.breeding.CountedService.Outcome;

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
                        lists.add(new ListedCow(cow, BreedingList.NOT_TO_BREED, time.from(), notToBreedWords(time))));
        if (mayBeBred && now.calving().isPresent()) {
            int days = cow.daysSinceCalving().orElseThrow();
            int since = cow.daysSinceService().orElse(CYCLE_EARLY_DAYS);
            LocalDate from = now.calving().get().plusDays(settings.waitingDays());
            if (days >= settings.waitingDays() && since >= CYCLE_EARLY_DAYS) {
                lists.add(new ListedCow(cow, BreedingList.TO_BREED, from, toBreedWords(cow, days)));
                if (now.services().isEmpty() && days > settings.waitingDays() + LATE_AFTER_WAITING_DAYS) {
                    lists.add(new ListedCow(
                            cow,
                            BreedingList.NOT_YET_SERVED_LATE,
                            from.plusDays(LATE_AFTER_WAITING_DAYS + 1L),
                            "Calved " + days + " days ago and never served since; the waiting period ended " + from
                                    + "."));
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
                    open + " services since " + (now.calving().isPresent() ? "calving" : "the first")
                            + " did not take."));
        }
    }

    private static String notToBreedWords(PutAside time) {
        return "Not to be bred since " + time.from() + ", by the farm's choice"
                + (time.reason().isBlank() ? "; no reason recorded." : ": " + time.reason() + ".");
    }

    private String toBreedWords(BreedingRecord cow, int days) {
        String start = "Calved " + cow.now().calving().orElseThrow() + ", " + days + " days ago (waiting period "
                + settings.waitingDays() + " days); ";
        Optional<CountedService> last = cow.now().lastService();
        if (last.isEmpty()) {
            return start + "not served since.";
        }
        String served = "last served " + last.get().date() + ", ";
        return cow.state() == State.SERVED
                ? start + served + "outcome not known: make sure she is open before she is served again."
                : start + served + "found open or back in heat.";
    }

    private void servedLists(BreedingRecord cow, List<ListedCow> lists) {
        LocalDate served = cow.now().lastService().orElseThrow().date();
        int since = cow.daysSinceService().orElseThrow();
        String words = "Served " + served + ", " + since + " days ago, outcome not known.";
        if (since >= CYCLE_EARLY_DAYS && since <= CYCLE_LATE_DAYS) {
            lists.add(new ListedCow(cow, BreedingList.WATCH_FOR_RETURN, served.plusDays(CYCLE_EARLY_DAYS), words));
        }
        if (since >= settings.checkDays()) {
            lists.add(new ListedCow(cow, BreedingList.TO_CHECK, served.plusDays(settings.checkDays()), words));
        }
    }

    private void pregnantLists(BreedingRecord cow, Pregnancy pregnancy, List<ListedCow> lists) {
        LocalDate asOf = cow.asOf();
        if (pregnancy.doubtedOn().isPresent()) {
            lists.add(new ListedCow(
                    cow,
                    BreedingList.RECHECK,
                    pregnancy.doubtedOn().get(),
                    "Found pregnant " + pregnancy.confirmedOn().orElse(asOf) + " and served again "
                            + pregnancy.doubtedOn().get() + "."));
        } else if (pregnancy.checks() == 1 && pregnancy.conception().isPresent()) {
            LocalDate served = pregnancy.conception().get();
            if (!asOf.isBefore(served.plusDays(RECHECK_FROM_DAYS)) && !asOf.isAfter(served.plusDays(RECHECK_TO_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.RECHECK,
                        served.plusDays(RECHECK_FROM_DAYS),
                        "Pregnant since " + served + ", found once, "
                                + pregnancy.confirmedOn().orElse(asOf) + "."));
            }
        }
        cow.expectedCalving().ifPresent(expected -> {
            LocalDate dryOff = expected.dryOff(settings.dryDays());
            boolean inMilk = cow.now().calving().isPresent() && !cow.isDry();
            String due = "Pregnant since " + expected.conception() + ", expected to calve " + expected.due();
            if (inMilk && !dryOff.isAfter(asOf.plusDays(DRY_OFF_AHEAD_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.DUE_TO_DRY_OFF,
                        dryOff,
                        due + "; " + settings.dryDays() + " days dry before."));
            }
            if (!expected.due().isAfter(asOf.plusDays(CALVE_AHEAD_DAYS))) {
                lists.add(new ListedCow(
                        cow,
                        BreedingList.DUE_TO_CALVE,
                        expected.due(),
                        due + " (95 of 100 from " + expected.earliest() + " to " + expected.latest() + ")."));
            }
        });
    }
}
