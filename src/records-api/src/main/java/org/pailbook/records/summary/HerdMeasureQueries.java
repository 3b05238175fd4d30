package org.pailbook.records.summary;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.pailbook.lactation.breeding.BreedingHistory;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.DueByMonth;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.summary.Compared;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdCareers;
import org.pailbook.lactation.summary.HerdCow;
import org.pailbook.lactation.summary.HerdExit;
import org.pailbook.lactation.summary.HerdLactationMeasures;
import org.pailbook.lactation.summary.HerdMilk;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.lactation.summary.HerdTurnover;
import org.pailbook.lactation.summary.ParityGroup;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.records.computed.HerdBreeding;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.MeasuredView;
import org.pailbook.records.wire.OrNull;

/** A herd's measures from what is recorded. */
@ApplicationScoped
class HerdMeasureQueries {
    private final Events events;
    private final HerdBreeding breeding;
    private final HerdSettings settings;

    @Inject
    HerdMeasureQueries(Events events, HerdBreeding breeding, HerdSettings settings) {
        this.events = events;
        this.breeding = breeding;
        this.settings = settings;
    }

    /**
     * What measures are made of besides the cows on the day.
     *
     * @param records all animals of the herd
     * @param histories of their breeding, in the same order
     * @param then the measures a year before: they need nothing of today, so that another processor may work them out meanwhile
     */
    record Recorded(
            List<CowRecord> records,
            List<BreedingHistory> histories,
            List<HerdExit> exits,
            SettingsInForce settings,
            CompletableFuture<DayMeasures> then) {

        private BreedingSettings bred() {
            return settings.breeding();
        }

        private CellCountCut cut() {
            return settings.highFrom(OptionalInt.empty());
        }
    }

    /** @param records all animals of the herd */
    Recorded read(HerdRow herd, List<CowRecord> records, LocalDate asOf) {
        return read(herd, records, breeding.histories(herd, records, asOf), asOf);
    }

    /** The same where their breeding is known. */
    Recorded read(HerdRow herd, List<CowRecord> records, List<BreedingHistory> histories, LocalDate asOf) {
        LocalDate before = asOf.minusDays(DayMeasures.YEAR_DAYS);
        List<HerdExit> exits = exits(herd, asOf);
        SettingsInForce inForce = settings.on(herd, asOf);
        BreedingSettings bred = inForce.breeding();
        CellCountCut cut = inForce.highFrom(OptionalInt.empty());
        return new Recorded(
                records,
                histories,
                exits,
                inForce,
                CompletableFuture.supplyAsync(() -> yearBefore(records, histories, exits, bred, cut, before)));
    }

    /**
     * @param day the herd on it
     * @param cows the animals read, in the same order, with what is known of their herd
     */
    HerdMeasuresView of(Recorded read, HerdOnDay day, List<CowOnDay> cows, LocalDate asOf) {
        List<BreedingRecord> today = onDay(read.records(), read.histories(), asOf);
        DayMeasures now = measures(read.records(), day, cows, today, read.exits(), read.bred(), read.cut(), asOf);
        return view(
                now,
                read.then().join(),
                DueByMonth.of(today, read.bred(), asOf),
                read.settings().used(),
                asOf);
    }

    private static DayMeasures yearBefore(
            List<CowRecord> records,
            List<BreedingHistory> histories,
            List<HerdExit> exits,
            BreedingSettings settings,
            CellCountCut cut,
            LocalDate before) {
        List<CowOnDay> cows =
                records.stream().map(record -> record.onDay(before)).toList();
        List<BreedingRecord> bred = onDay(records, histories, before);
        return measures(records, HerdOnDay.of(cows, before), cows, bred, exits, settings, cut, before);
    }

    private static List<BreedingRecord> onDay(List<CowRecord> records, List<BreedingHistory> histories, LocalDate day) {
        List<BreedingRecord> all = new ArrayList<>();
        for (int i = 0; i < records.size(); i++) {
            all.add(BreedingRecord.of(records.get(i).id(), histories.get(i), day));
        }
        return all;
    }

    private static DayMeasures measures(
            List<CowRecord> records,
            HerdOnDay herdOnDay,
            List<CowOnDay> cows,
            List<BreedingRecord> bred,
            List<HerdExit> exits,
            BreedingSettings settings,
            CellCountCut cut,
            LocalDate day) {
        List<HerdCow> herd = new ArrayList<>();
        List<HerdCareers.Career> careers = new ArrayList<>();
        for (int i = 0; i < cows.size(); i++) {
            herd.add(HerdCow.of(cows.get(i), records.get(i).history()));
            careers.add(
                    HerdCareers.Career.of(cows.get(i), records.get(i).history().birthDate()));
        }
        return DayMeasures.of(herd, herdOnDay, bred, careers, exits, settings, cut, day);
    }

    private List<HerdExit> exits(HerdRow herd, LocalDate asOf) {
        return events.all(DepartureRow.class, herd, null, asOf).stream()
                .map(row -> new HerdExit(row.animalId, row.date, row.kind, row.isDeath(), row.reasons()))
                .toList();
    }

    private static HerdMeasuresView view(
            DayMeasures today, DayMeasures before, List<DueByMonth> due, UsedSettingsView used, LocalDate asOf) {
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
                groups(today),
                MeasuredView.of(today.lactations().peakFirstToMature()),
                milk.byStage().stream()
                        .map(cell -> new HerdMeasuresView.StageView(
                                cell.group().wireName(), cell.stage().wireName(), MeasuredView.of(cell.milk())))
                        .toList(),
                FigureView.of(today.lactations().rollingHerdAverage(), true),
                FigureView.of(today.lactations().fpcmPerCowYear(), true),
                new HerdMeasuresView.TurnoverView(
                        asOf.minusDays(DayMeasures.YEAR_DAYS - 1L).toString(),
                        turnover.cowDays(),
                        MeasuredView.of(turnover.rate()),
                        MeasuredView.of(turnover.deathRate()),
                        MeasuredView.of(turnover.withinSixtyDays()),
                        counts(turnover.byDestination()),
                        counts(turnover.byReason()),
                        counts(turnover.byAnyReason())),
                MeasuredView.of(today.careers().ageAtFirstCalving()),
                MeasuredView.of(today.careers().stayability()),
                today.breeding().stream().map(MeasuredView::of).toList(),
                Stream.concat(today.cellsOfLastTest().stream(), today.cellsOfYear().stream())
                        .map(MeasuredView::of)
                        .toList(),
                due.stream()
                        .map(month -> new HerdMeasuresView.DueView(
                                month.month().toString(), month.cows(), month.heifers(), month.toDryOff()))
                        .toList(),
                used,
                compared(today, before));
    }

    private static List<HerdMeasuresView.GroupView> groups(DayMeasures today) {
        HerdMilk milk = today.milk();
        HerdLactationMeasures lactations = today.lactations();
        HerdOnDay day = today.day();
        Map<ParityGroup, Integer> cows = milk.byGroup();
        Map<ParityGroup, Measured> peak = lactations.peak();
        Map<ParityGroup, Measured> completed = lactations.completed305();
        Map<ParityGroup, Measured> projected = lactations.projected305(day.milkProjections());
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

    private static List<HerdMeasuresView.ComparedView> compared(DayMeasures today, DayMeasures before) {
        List<HerdMeasuresView.ComparedView> compared = new ArrayList<>();
        List<DayMeasures.Line> then = before.lines();
        for (DayMeasures.Line now : today.lines()) {
            compared.add(compared(
                    now.lactations(),
                    now.measured().measure().what(),
                    now.measured().figure(),
                    then.get(compared.size()).measured().figure()));
        }
        HerdOnDay day = today.day();
        HerdOnDay dayBefore = before.day();
        compared.add(compared(
                null,
                "Milk of 365 days for each cow and year",
                today.lactations().rollingHerdAverage(),
                before.lactations().rollingHerdAverage()));
        compared.add(compared(
                null,
                "Fat-and-protein-corrected milk for each cow-year",
                today.lactations().fpcmPerCowYear(),
                before.lactations().fpcmPerCowYear()));
        compared.add(compared(null, "Mean days in milk", day.meanDaysInMilk(), dayBefore.meanDaysInMilk()));
        compared.add(compared(
                null, "Fat of the last test date, %", day.fatPctOfLastTestDate(), dayBefore.fatPctOfLastTestDate()));
        compared.add(compared(
                null,
                "Protein of the last test date, %",
                day.proteinPctOfLastTestDate(),
                dayBefore.proteinPctOfLastTestDate()));
        compared.add(compared(
                null,
                "Cells of the last test date, weighted by milk",
                day.sccOfLastTestDate(),
                dayBefore.sccOfLastTestDate()));
        compared.add(compared(
                null,
                "Mean somatic cell score of the last test date",
                day.meanSomaticCellScore(),
                dayBefore.meanSomaticCellScore()));
        return compared;
    }

    private static HerdMeasuresView.ComparedView compared(
            String lactations, String what, Figure now, Figure yearBefore) {
        Compared compared = new Compared(now, yearBefore);
        return new HerdMeasuresView.ComparedView(
                now.method().id(),
                lactations,
                what,
                FigureView.of(now, false),
                FigureView.of(yearBefore, false),
                OrNull.of(compared.difference()));
    }
}
