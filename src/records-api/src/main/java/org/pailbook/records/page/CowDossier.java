package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.picture.LactationPicture.Event;
import org.pailbook.picture.LactationPicture.Moment;
import org.pailbook.records.computed.HerdBreeding;
import org.pailbook.records.computed.HerdMilkRecords;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.ForemilkCheckRow;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.store.TreatmentRow;

/** What is recorded of one cow besides calvings and test days, and what follows from it. */
@ApplicationScoped
class CowDossier {
    /** Milkings of every day would hide all else. Ours. */
    private static final int DAYS_OF_MILKINGS = 14;

    private final Events events;
    private final HerdBreeding breeding;
    private final HerdMilkRecords milk;
    private final HerdSettings settings;
    private final CowWorth worth;

    @Inject
    CowDossier(Events events, HerdBreeding breeding, HerdMilkRecords milk, HerdSettings settings, CowWorth worth) {
        this.events = events;
        this.breeding = breeding;
        this.milk = milk;
        this.settings = settings;
        this.worth = worth;
    }

    /**
     * @param lines of the events table
     * @param moments of the time line
     * @param against reasons why her milk stays out of the tank
     * @param toDo lists she is on, each with the reason
     */
    record Dossier(
            List<CowPage.EventLine> lines,
            List<Moment> moments,
            List<String> against,
            List<String> toDo,
            Optional<CowWorth.Worth> worth) {}

    Dossier of(KnownCow cow, Shown shown) {
        List<CowPage.EventLine> lines = new ArrayList<>();
        List<Moment> moments = new ArrayList<>();
        for (ServiceRow row : of(ServiceRow.class, cow, shown)) {
            add(
                    lines,
                    row,
                    row.sire == null ? PageWords.word("event.served") : PageWords.with("event.servedBy", row.sire));
            moments.add(new Moment(row.date, Event.SERVICE));
        }
        for (PregnancyCheckRow row : of(PregnancyCheckRow.class, cow, shown)) {
            add(lines, row, PageWords.with("event.check", PageWords.word("event.check." + row.result)));
            moments.add(new Moment(row.date, Event.CHECK));
        }
        for (TreatmentRow row : of(TreatmentRow.class, cow, shown)) {
            add(
                    lines,
                    row,
                    row.milkWithheldUntil == null
                            ? PageWords.with("event.treatedNoEnd", row.productName)
                            : PageWords.with("event.treated", row.productName, row.milkWithheldUntil));
            moments.add(new Moment(row.date, Event.TREATMENT));
        }
        for (ForemilkCheckRow row : of(ForemilkCheckRow.class, cow, shown)) {
            add(
                    lines,
                    row,
                    PageWords.with(
                            "event.foremilk",
                            Said.coded("quarter." + row.quarter, row.quarter),
                            PageWords.word("event.foremilk." + row.finding)));
            if (!"normal".equals(row.finding)) {
                moments.add(new Moment(row.date, Event.FOREMILK));
            }
        }
        lines.addAll(milkings(cow, shown));
        SettingsInForce own = settings.on(shown.herd(), shown.asOf());
        return new Dossier(
                lines,
                moments,
                cow.onDay().hasLeft() ? List.of() : against(cow, own, shown),
                BreedingWorklist.with(own.breeding())
                        .ofCow(breeding.of(shown.herd(), cow.record(), shown.asOf()))
                        .stream()
                        .map(listed -> PageWords.word("list." + DecisionPages.path(listed.list())) + ": "
                                + Said.in(listed.said(), shown))
                        .toList(),
                worth.of(cow, shown));
    }

    private List<String> against(KnownCow cow, SettingsInForce own, Shown shown) {
        return own.withheld(OptionalInt.empty())
                .of(milk.of(shown.herd(), cow.record(), shown.asOf()), WithheldMilk.endOf(shown.asOf()))
                .map(withheld -> withheld.reasons().stream()
                        .map(reason -> Said.in(reason.said(), shown))
                        .toList())
                .orElse(List.of());
    }

    private static void add(List<CowPage.EventLine> lines, AnimalEvent row, String what) {
        lines.add(new CowPage.EventLine(row.date.toString(), what));
    }

    private <E extends AnimalEvent> List<E> of(Class<E> kind, KnownCow cow, Shown shown) {
        return from(null, kind, cow, shown);
    }

    private <E extends AnimalEvent> List<E> from(LocalDate from, Class<E> kind, KnownCow cow, Shown shown) {
        return events.allOf(cow.record().id(), kind, shown.herd(), from, shown.asOf());
    }

    /** One line a day. */
    private List<CowPage.EventLine> milkings(KnownCow cow, Shown shown) {
        Map<LocalDate, List<MilkingRow>> byDate =
                from(shown.asOf().minusDays(DAYS_OF_MILKINGS - 1L), MilkingRow.class, cow, shown).stream()
                        .filter(row -> row.milkKg != null)
                        .sorted(Comparator.comparing(MilkingRow::at))
                        .collect(Collectors.groupingBy(row -> row.date, TreeMap::new, Collectors.toList()));
        return byDate.entrySet().stream()
                .map(day -> new CowPage.EventLine(
                        day.getKey().toString(),
                        PageWords.with(
                                "event.milked",
                                shown.weight(
                                        OptionalDouble.of(day.getValue().stream()
                                                .mapToDouble(row -> row.milkKg)
                                                .sum()),
                                        1),
                                day.getValue().size())))
                .toList();
    }
}
