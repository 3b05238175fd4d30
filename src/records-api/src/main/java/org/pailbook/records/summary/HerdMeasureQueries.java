package org.pailbook.records.summary;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.method.Measure;
import org.pailbook.lactation.summary.Compared;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdCow;
import org.pailbook.lactation.summary.HerdExit;
import org.pailbook.lactation.summary.HerdLactationMeasures;
import org.pailbook.lactation.summary.HerdMilk;
import org.pailbook.lactation.summary.HerdTurnover;
import org.pailbook.lactation.summary.ParityGroup;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.MeasuredView;

/** A herd's measures from what is recorded. */
@ApplicationScoped
class HerdMeasureQueries {
    private static final int YEAR_DAYS = 365;
    private static final List<String> DIED = List.of("death", "cullOnFarm");

    private final Events events;

    @Inject
    HerdMeasureQueries(Events events) {
        this.events = events;
    }

    /** One day's measures that are compared with those of another. */
    private record OnDay(HerdMilk milk, HerdLactationMeasures lactations, HerdTurnover turnover) {}

    /**
     * @param records all animals of the herd
     * @param cows the same animals, in the same order, with what is known of their herd
     */
    HerdMeasuresView of(HerdRow herd, List<CowRecord> records, List<CowOnDay> cows, LocalDate asOf) {
        List<HerdExit> exits = exits(herd, asOf);
        List<HerdCow> now = new ArrayList<>();
        List<HerdCow> then = new ArrayList<>();
        LocalDate before = asOf.minusDays(YEAR_DAYS);
        for (int i = 0; i < cows.size(); i++) {
            CowRecord record = records.get(i);
            now.add(HerdCow.of(cows.get(i), record.history()));
            then.add(HerdCow.of(record.onDay(before), record.history()));
        }
        OnDay today = onDay(now, exits, asOf);
        return view(today, onDay(then, exits, before), asOf);
    }

    private static OnDay onDay(List<HerdCow> cows, List<HerdExit> exits, LocalDate day) {
        return new OnDay(
                HerdMilk.of(cows, day),
                HerdLactationMeasures.of(cows, day),
                HerdTurnover.of(cows, exits, day.minusDays(YEAR_DAYS - 1L), day));
    }

    private List<HerdExit> exits(HerdRow herd, LocalDate asOf) {
        return events
                .list(DepartureRow.class, herd, new Events.Selection(null, null, asOf, null, false), Integer.MAX_VALUE)
                .stream()
                .map(row -> new HerdExit(
                        row.animalId,
                        row.date,
                        row.kind,
                        DIED.contains(row.kind),
                        Optional.ofNullable(row.reason).orElse("")))
                .toList();
    }

    private static HerdMeasuresView view(OnDay today, OnDay before, LocalDate asOf) {
        HerdMilk milk = today.milk();
        HerdTurnover turnover = today.turnover();
        return new HerdMeasuresView(
                MeasuredView.of(milk.perCow()),
                MeasuredView.of(milk.annualised()),
                MeasuredView.of(milk.percentInMilk()),
                MeasuredView.of(milk.percentFirstLactation()),
                milk.byParity().entrySet().stream()
                        .map(entry -> new HerdMeasuresView.ParityView(entry.getKey(), entry.getValue()))
                        .toList(),
                groups(milk, today.lactations()),
                MeasuredView.of(today.lactations().peakFirstToMature()),
                milk.byStage().stream()
                        .map(cell -> new HerdMeasuresView.StageView(
                                cell.group().wireName(), cell.stage().wireName(), MeasuredView.of(cell.milk())))
                        .toList(),
                FigureView.of(today.lactations().rollingHerdAverage(), true),
                new HerdMeasuresView.TurnoverView(
                        asOf.minusDays(YEAR_DAYS - 1L).toString(),
                        turnover.cowDays(),
                        MeasuredView.of(turnover.rate()),
                        MeasuredView.of(turnover.deathRate()),
                        MeasuredView.of(turnover.withinSixtyDays()),
                        counts(turnover.byDestination()),
                        counts(turnover.byReason())),
                compared(today, before));
    }

    private static List<HerdMeasuresView.GroupView> groups(HerdMilk milk, HerdLactationMeasures lactations) {
        Map<ParityGroup, Integer> cows = milk.byGroup();
        Map<ParityGroup, Measured> peak = lactations.peak();
        Map<ParityGroup, Measured> completed = lactations.completed305();
        Map<ParityGroup, Measured> projected = lactations.projected305();
        Map<ParityGroup, Measured> persistency = lactations.persistency();
        List<HerdMeasuresView.GroupView> groups = new ArrayList<>();
        for (ParityGroup group : ParityGroup.values()) {
            groups.add(new HerdMeasuresView.GroupView(
                    group.wireName(),
                    cows.get(group),
                    MeasuredView.of(peak.get(group)),
                    MeasuredView.of(completed.get(group)),
                    MeasuredView.of(projected.get(group)),
                    MeasuredView.of(persistency.get(group))));
        }
        return groups;
    }

    private static List<HerdMeasuresView.CountedView> counts(Map<String, Integer> counts) {
        return counts.entrySet().stream()
                .map(entry -> new HerdMeasuresView.CountedView(entry.getKey(), entry.getValue()))
                .toList();
    }

    private static List<HerdMeasuresView.ComparedView> compared(OnDay today, OnDay before) {
        return List.of(
                compared(today.milk().perMilkingCow(), before.milk().perMilkingCow()),
                compared(today.milk().perCow(), before.milk().perCow()),
                compared(today.milk().percentInMilk(), before.milk().percentInMilk()),
                compared(
                        "Milk of 365 days for each cow and year",
                        today.lactations().rollingHerdAverage(),
                        before.lactations().rollingHerdAverage()),
                compared(today.turnover().rate(), before.turnover().rate()),
                compared(today.turnover().deathRate(), before.turnover().deathRate()));
    }

    private static HerdMeasuresView.ComparedView compared(Measured now, Measured yearBefore) {
        Measure measure = now.measure();
        return compared(measure.what(), now.figure(), yearBefore.figure());
    }

    private static HerdMeasuresView.ComparedView compared(String what, Figure now, Figure yearBefore) {
        Compared compared = new Compared(now, yearBefore);
        return new HerdMeasuresView.ComparedView(
                now.method().id(),
                what,
                FigureView.of(now, false),
                FigureView.of(yearBefore, false),
                compared.difference().isPresent()
                        ? (Double) compared.difference().getAsDouble()
                        : null);
    }
}
