package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.records.computed.BreedingLists;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.computed.HerdMilkRecords;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.computed.VeterinaryCall;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.MilkByDay;
import org.pailbook.records.store.TankPickupRow;

/** What a herd's page says of today besides its figures: what wants doing, and the milk of the last days. */
@ApplicationScoped
class HerdToday {
    private static final int DAYS = 30;
    private static final List<BreedingList> SHOWN_LISTS = List.of(
            BreedingList.TO_BREED, BreedingList.TO_CHECK, BreedingList.DUE_TO_DRY_OFF, BreedingList.DUE_TO_CALVE);

    private final DecisionLists lists;
    private final BreedingLists bred;
    private final HerdMilkRecords milk;
    private final MilkByDay milkings;
    private final Events events;

    @Inject
    HerdToday(DecisionLists lists, BreedingLists bred, HerdMilkRecords milk, MilkByDay milkings, Events events) {
        this.lists = lists;
        this.bred = bred;
        this.milk = milk;
        this.milkings = milkings;
        this.events = events;
    }

    /** Something that wants doing, and where it is told. */
    record ToDo(String link, String text) {}

    /** Milk of one day: what was weighed at milkings, of so many cows, and what was picked up. */
    record DayLine(String date, String milkings, String cows, String tank) {}

    List<ToDo> toDo(Shown shown, List<KnownCow> cows) {
        LocalDate day = shown.asOf();
        List<CowRecord> animals = cows.stream().map(KnownCow::record).toList();
        List<ToDo> toDo = new ArrayList<>(calls(shown, cows, animals));
        add(
                toDo,
                shown,
                "milk-withheld",
                lists.withheld(shown.herd(), animals, day).size());
        Map<BreedingList, Long> counts = bred.counts(shown.herd(), animals, day);
        SHOWN_LISTS.forEach(list -> add(toDo, shown, DecisionPages.path(list), counts.getOrDefault(list, 0L)));
        return toDo;
    }

    private static void add(List<ToDo> toDo, Shown shown, String list, long cows) {
        if (cows > 0) {
            toDo.add(new ToDo(
                    shown.page("/lists/" + list), PageWords.with("herd.toDo", PageWords.word("list." + list), cows)));
        }
    }

    /** Cows to see the veterinarian about. */
    private List<ToDo> calls(Shown shown, List<KnownCow> cows, List<CowRecord> animals) {
        List<MilkedCow> milked = milk.of(shown.herd(), animals, shown.asOf());
        return VeterinaryCall.of(animals, cows.stream().map(KnownCow::onDay).toList(), milked, shown.asOf()).stream()
                .map(call -> new ToDo(
                        shown.cow(call.record().shownIdentifier()),
                        call.record().shownIdentifier().id() + ": "
                                + Said.coded(
                                        "veterinary." + call.trigger().wireName(),
                                        call.trigger().words())))
                .toList();
    }

    /** Latest first. */
    List<DayLine> milk(Shown shown) {
        LocalDate from = shown.asOf().minusDays(DAYS - 1L);
        TreeMap<LocalDate, DayLine> byDate = new TreeMap<>();
        for (MilkByDay.Day day : milkings.of(shown.herd(), from, shown.asOf())) {
            byDate.put(
                    day.date(),
                    new DayLine(
                            day.date().toString(),
                            Shown.number(shown.unit().of(day.milkKg()), 0),
                            Long.toString(day.cows()),
                            Shown.NONE));
        }
        Map<LocalDate, Double> tank = events.all(TankPickupRow.class, shown.herd(), from, shown.asOf()).stream()
                .filter(row -> row.milkKg != null)
                .collect(Collectors.groupingBy(row -> row.date, Collectors.summingDouble(row -> row.milkKg)));
        tank.forEach((date, kg) -> {
            DayLine there = byDate.getOrDefault(date, new DayLine(date.toString(), Shown.NONE, Shown.NONE, ""));
            byDate.put(
                    date,
                    new DayLine(
                            there.date(),
                            there.milkings(),
                            there.cows(),
                            Shown.number(shown.unit().of(kg), 0)));
        });
        return List.copyOf(byDate.descendingMap().values());
    }
}
