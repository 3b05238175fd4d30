package org.pailbook.records.udder;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.CowCellCounts;
import org.pailbook.lactation.udderhealth.HerdCellCounts;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankLimits;
import org.pailbook.lactation.udderhealth.TankStanding;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.computed.HerdMilkRecords;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.HerdTank;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.computed.VeterinaryCall;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.MeasuredView;

/** Udder health from what is recorded. */
@ApplicationScoped
class UdderHealthQueries {
    private static final List<String> CAUTIONS = List.of(
            VeterinaryTrigger.CAUTION,
            "Keeping a cow's milk out of the tank does not treat her; feeding or selling it may be forbidden where you are.");

    private final CowRecords records;
    private final HerdMilkRecords milk;
    private final TankQueries tank;
    private final HerdTank herdTank;
    private final HerdSettings settings;

    @Inject
    UdderHealthQueries(
            CowRecords records, HerdMilkRecords milk, TankQueries tank, HerdTank herdTank, HerdSettings settings) {
        this.records = records;
        this.milk = milk;
        this.tank = tank;
        this.herdTank = herdTank;
        this.settings = settings;
    }

    /** An animal with her lactations on the day. */
    record Animal(CowRecord record, CowOnDay onDay) {}

    UdderHealthView of(KnownHerd known, OptionalInt highFrom, Optional<TankLimit> askedLimit) {
        AsOf asOf = known.asOf();
        LocalDate day = asOf.day();
        SettingsInForce inForce = settings.on(known.herd(), day);
        CellCountCut cut = inForce.highFrom(highFrom);
        Optional<TankLimit> limit = inForce.tankLimit(askedLimit);
        WithheldMilk withheld = inForce.withheld(OptionalInt.empty());
        List<Animal> animals = records.ofHerd(known.herd(), day).stream()
                .filter(record -> record.isBornBy(day))
                .map(record -> new Animal(record, record.onDay(day)))
                .toList();
        List<CowCellCounts> counts =
                animals.stream().map(animal -> animal.onDay().cellCounts()).toList();
        List<MilkedCow> milked =
                milk.of(known.herd(), animals.stream().map(Animal::record).toList(), day);
        HerdCellCounts herd = HerdCellCounts.of(counts, cut, day);
        Optional<TankStanding> standing = limit.map(one -> herdTank.standing(known.herd(), one, day));
        List<Finding> findings = herd.findings();
        boolean blocked = findings.stream().anyMatch(finding -> finding.severity() == Severity.BLOCKS);
        return new UdderHealthView(
                known.herd().code,
                day.toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                blocked ? "notEnoughData" : "ok",
                inForce.used(),
                cut.highFromThousandPerMl(),
                herd.lastTestDate().map(LocalDate::toString).orElse(null),
                views(Stream.concat(Stream.of(herd.prevalence()), herd.ratesOfLastTest().stream())),
                views(Stream.concat(herd.ratesOfYear().stream(), Stream.of(herd.freshHeifersHigh()))),
                views(herd.ratesOverDryPeriod().stream()),
                cows(animals, herd, cut, day),
                tank.view(known.herd(), animals, milked, withheld, herd.lastTestDate(), standing, day),
                TankLimits.all().stream()
                        .map(one -> new UdderHealthView.LimitView(
                                one.id(),
                                one.place(),
                                one.limitThousandPerMl(),
                                one.validFrom().map(LocalDate::toString).orElse(null),
                                one.source()))
                        .toList(),
                triggers(animals, milked, herd, standing, day),
                findings.stream().map(WarningView::of).toList(),
                CAUTIONS);
    }

    private static List<MeasuredView> views(Stream<Measured> measures) {
        return measures.map(MeasuredView::of).toList();
    }

    private static List<UdderHealthView.CowView> cows(
            List<Animal> animals, HerdCellCounts herd, CellCountCut cut, LocalDate day) {
        Map<String, CowRecord> byId =
                animals.stream().map(Animal::record).collect(Collectors.toMap(CowRecord::id, Function.identity()));
        return herd.ofLastTest().stream()
                .map(one -> {
                    CowRecord record = byId.get(one.cow().animal());
                    return new UdderHealthView.CowView(
                            record.shownIdentifier(),
                            record.name().orElse(null),
                            one.cow().lastParity(),
                            one.test().date().toString(),
                            one.sccThousandPerMl(),
                            SomaticCellScore.score(one.sccThousandPerMl()),
                            cut.isHigh(one.test()),
                            one.cow()
                                    .lastPair(cut, day)
                                    .map(pair -> pair.state().wireName())
                                    .orElse(null));
                })
                .toList();
    }

    private static List<UdderHealthView.TriggerView> triggers(
            List<Animal> animals,
            List<MilkedCow> milked,
            HerdCellCounts herd,
            Optional<TankStanding> standing,
            LocalDate day) {
        Stream<UdderHealthView.TriggerView> ofCows = VeterinaryCall.of(
                        animals.stream().map(Animal::record).toList(),
                        animals.stream().map(Animal::onDay).toList(),
                        milked,
                        day)
                .stream()
                .map(call -> trigger(call.trigger(), call.record().shownIdentifier()));
        Stream<UdderHealthView.TriggerView> ofHerd =
                VeterinaryTrigger.ofHerd(herd.newInfectionRisksOfLastTwoTests(), herd.freshHeifersHigh(), standing)
                        .stream()
                        .map(trigger -> trigger(trigger, null));
        return Stream.concat(ofCows, ofHerd).toList();
    }

    private static UdderHealthView.TriggerView trigger(VeterinaryTrigger trigger, AnimalIdentifier animal) {
        return new UdderHealthView.TriggerView(trigger.wireName(), trigger.words(), animal);
    }
}
