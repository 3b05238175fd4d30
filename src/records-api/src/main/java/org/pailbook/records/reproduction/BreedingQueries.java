package org.pailbook.records.reproduction;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.breeding.BreedingIntervals;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingSummary;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.breeding.CycleRates;
import org.pailbook.lactation.breeding.ListedCow;
import org.pailbook.lactation.breeding.ServiceOutcomes;
import org.pailbook.lactation.breeding.TimeToPregnancy;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.records.computed.BreedingLists;
import org.pailbook.records.computed.HerdBreeding;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.MeasuredView;
import org.pailbook.records.wire.OrNull;

/** Breeding lists and measures from what is recorded. */
@ApplicationScoped
class BreedingQueries {
    private final HerdBreeding breeding;
    private final HerdSettings settingsOf;
    private final BreedingLists lists;
    private final HerdValuation valuation;

    @Inject
    BreedingQueries(HerdBreeding breeding, HerdSettings settingsOf, BreedingLists lists, HerdValuation valuation) {
        this.breeding = breeding;
        this.settingsOf = settingsOf;
        this.lists = lists;
        this.valuation = valuation;
    }

    WorklistView worklist(KnownHerd known, Function<SettingsInForce, BreedingSettings> asked) {
        AsOf asOf = known.asOf();
        BreedingLists.BredLines lines = lists.on(known.herd(), asOf.day(), asked);
        BreedingSettings settings = lines.settings();
        Map<BreedingList, List<BreedingLists.BredLine>> listed = lines.lines().stream()
                .collect(Collectors.groupingBy(line -> line.listed().list()));
        List<Finding> findings =
                BreedingSummary.of(lines.animals(), settings, asOf.day()).findings();
        return new WorklistView(
                known.herd().code,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                status(findings),
                SettingsView.of(settings),
                lines.used(),
                PregnancyWorthView.of(lines.worth(), asOf.day()),
                Arrays.stream(BreedingList.values())
                        .map(list -> new WorklistView.ListView(
                                list.wireName(),
                                list.rule(),
                                list.source(),
                                list.howKnown().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                                listed.getOrDefault(list, List.of()).stream()
                                        .map(BreedingQueries::cow)
                                        .toList()))
                        .toList(),
                findings.stream().map(WarningView::of).toList(),
                BreedingWorklist.CAUTIONS);
    }

    private static String status(List<Finding> findings) {
        return findings.stream().anyMatch(finding -> finding.severity() == Severity.BLOCKS) ? "notEnoughData" : "ok";
    }

    private static WorklistView.CowView cow(BreedingLists.BredLine line) {
        ListedCow listed = line.listed();
        CowRecord record = line.record();
        BreedingRecord cow = listed.cow();
        return new WorklistView.CowView(
                record.shownIdentifier(),
                record.name().orElse(null),
                cow.now().parity(),
                OrNull.of(cow.daysSinceCalving()),
                cow.state().name().toLowerCase(Locale.ROOT),
                cow.now()
                        .lastService()
                        .map(service -> service.date().toString())
                        .orElse(null),
                listed.day().toString(),
                listed.why(),
                cow.expectedCalving()
                        .map(expected -> new WorklistView.ExpectedView(
                                expected.conception().toString(),
                                expected.due().toString(),
                                expected.earliest().toString(),
                                expected.latest().toString(),
                                expected.dryOff(line.settings().dryDays()).toString(),
                                expected.findings().stream()
                                        .map(WarningView::of)
                                        .toList()))
                        .orElse(null),
                line.pregnancyValue().map(Figure::orThrow).orElse(null));
    }

    BreedingSummaryView summary(KnownHerd known, Function<SettingsInForce, BreedingSettings> asked) {
        AsOf asOf = known.asOf();
        SettingsInForce inForce = settingsOf.on(known.herd(), asOf.day());
        BreedingSettings settings = asked.apply(inForce);
        List<HerdBreeding.BredCow> cows = breeding.of(known.herd(), asOf.day());
        List<BreedingRecord> records =
                cows.stream().map(HerdBreeding.BredCow::breeding).toList();
        BreedingSummary summary = BreedingSummary.of(records, settings, asOf.day());
        CycleRates cycles = summary.cycles();
        return new BreedingSummaryView(
                known.herd().code,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                status(summary.findings()),
                summary.from().toString(),
                SettingsView.of(settings),
                inForce.used(),
                MeasuredView.of(cycles.pregnancyRateOfLateCycles()),
                measures(summary),
                cycles.cycles().stream()
                        .map(cycle -> new BreedingSummaryView.CycleView(
                                cycle.first().toString(),
                                cycle.last().toString(),
                                cycle.eligible(),
                                cycle.served(),
                                cycle.pregnant(),
                                cycle.pending(),
                                MeasuredView.of(cycles.inseminationRisk(cycle)),
                                MeasuredView.of(cycles.pregnancyRate(cycle))))
                        .toList(),
                timeToPregnancy(summary.intervals().timeToPregnancy()),
                PregnancyWorthView.of(valuation.pregnancies(known.herd(), cows, asOf.day()), asOf.day()),
                summary.findings().stream().map(WarningView::of).toList(),
                BreedingWorklist.CAUTIONS);
    }

    private static List<MeasuredView> measures(BreedingSummary summary) {
        ServiceOutcomes outcomes = summary.outcomes();
        BreedingIntervals intervals = summary.intervals();
        return Stream.of(
                        summary.cycles().pregnancyRateOfYear(),
                        summary.cycles().inseminationRiskOfYear(),
                        summary.cycles().pregnanciesPerCowCycle(),
                        outcomes.conceptionRisk(),
                        outcomes.servicesPerConception(),
                        outcomes.servicesPerConceptionStrict(),
                        outcomes.pregnancyLoss(),
                        intervals.daysToFirstService(),
                        intervals.daysOpen(),
                        intervals.daysOpenSoFar(),
                        intervals.projectedCalvingInterval(),
                        intervals.calvingInterval())
                .map(MeasuredView::of)
                .toList();
    }

    private static BreedingSummaryView.TimeToPregnancyView timeToPregnancy(TimeToPregnancy.Curve curve) {
        return new BreedingSummaryView.TimeToPregnancyView(
                curve.cows(),
                curve.pregnant(),
                FigureView.of(curve.median(), true),
                curve.steps().stream()
                        .map(step -> new BreedingSummaryView.StepView(
                                step.day(),
                                step.atRisk(),
                                step.pregnant(),
                                step.stillOpenShare(),
                                step.standardError(),
                                new FigureView.Ends(step.low(), step.high())))
                        .toList());
    }
}
