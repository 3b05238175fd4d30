package org.pailbook.records.projection;

import io.micrometer.core.annotation.Timed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormula;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.DayExpectation;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.picture.LactationPicture;
import org.pailbook.picture.PictureForm;
import org.pailbook.records.computed.CurveView;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.Subject;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;

/** Computes lactations of one cow from what is recorded of her. */
@ApplicationScoped
class LactationQueries {
    private final CowRecords records;
    private final HerdLearning learning;
    private final HerdSettings settings;

    @Inject
    LactationQueries(CowRecords records, HerdLearning learning, HerdSettings settings) {
        this.records = records;
        this.learning = learning;
        this.settings = settings;
    }

    /** How a lactation is to be computed and shown. */
    record Choice(
            CorrectedMilkFormula correctedMilk,
            CurveModel curve,
            boolean explain,
            Optional<DryOffDate> dryOff,
            boolean daily) {}

    List<LactationView> all(HerdRow herd, AnimalRow animal, AsOf asOf, Choice choice) {
        CowRecord record = records.ofAnimal(herd, animal, asOf.day());
        CowOnDay cow = taught(herd, record, asOf);
        return cow.lactations().lactations().stream()
                .map(lactation -> view(herd, record, cow, lactation, asOf, choice))
                .toList();
    }

    /** The lactation of that parity; without a parity the latest. */
    @Timed(value = "pailbook.projection", description = "Time a lactation takes with its projection")
    LactationView one(HerdRow herd, AnimalRow animal, Optional<Integer> parity, AsOf asOf, Choice choice) {
        CowRecord record = records.ofAnimal(herd, animal, asOf.day());
        CowOnDay cow = taught(herd, record, asOf);
        return find(cow, parity)
                .map(lactation -> view(herd, record, cow, lactation, asOf, choice))
                .orElseGet(() -> none(herd, record, cow, parity, asOf));
    }

    private CowOnDay taught(HerdRow herd, CowRecord record, AsOf asOf) {
        return record.onDay(asOf.day()).withHerd(learning.of(herd, asOf.day()));
    }

    /** The lactation of that parity, without a parity the latest, drawn in the herd's unit of weights; empty if there is none. */
    Optional<String> picture(HerdRow herd, AnimalRow animal, Optional<Integer> parity, AsOf asOf) {
        CowRecord record = records.ofAnimal(herd, animal, asOf.day());
        CowOnDay cow = taught(herd, record, asOf);
        FileUnit unit =
                settings.on(herd, asOf.day()).milkUnit().flatMap(FileUnit::of).orElse(FileUnit.KG);
        return find(cow, parity)
                .map(assembled -> LactationPicture.of(
                        PictureForm.FILE.withWeightsIn(new PictureForm.WeightUnit(unit.wireName(), unit.factor())),
                        record.name().orElse(record.shownIdentifier().id()),
                        assembled.lactation(),
                        cow.milkProjection(assembled),
                        List.of(),
                        asOf.day()));
    }

    /** The lactation of that parity, without a parity the latest, for methods of the caller's choice. */
    Subject subject(HerdRow herd, AnimalRow animal, Optional<Integer> parity, AsOf asOf) {
        CowRecord record = records.ofAnimal(herd, animal, asOf.day());
        CowOnDay cow = record.onDay(asOf.day());
        Optional<AssembledLactation> found = find(cow, parity);
        return new Subject(
                Optional.of(herd.code),
                Optional.of(record.shownIdentifier()),
                cow.breed(),
                found.map(assembled -> assembled.lactation().parity()).or(() -> parity),
                found.map(AssembledLactation::lactation),
                asOf,
                found.map(AssembledLactation::findings).orElseGet(() -> whyNone(cow, parity)));
    }

    private static Optional<AssembledLactation> find(CowOnDay cow, Optional<Integer> parity) {
        return parity.isPresent()
                ? cow.lactations().ofParity(parity.get())
                : cow.lactations().latest();
    }

    private static List<Finding> whyNone(CowOnDay cow, Optional<Integer> parity) {
        Finding missing = Finding.of(FindingCode.NO_CALVING);
        return cow.lactations().findings().stream().anyMatch(finding -> finding.code() == FindingCode.NO_CALVING)
                ? cow.lactations().findings()
                : List.of(missing.withField("parity").withSeen("no lactation of parity " + parity.orElse(0)));
    }

    private static LactationView none(
            HerdRow herd, CowRecord record, CowOnDay cow, Optional<Integer> parity, AsOf asOf) {
        return new LactationView(
                herd.code,
                record.shownIdentifier(),
                parity.orElse(null),
                null,
                null,
                null,
                null,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                "notEnoughData",
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                whyNone(cow, parity).stream().map(WarningView::of).toList());
    }

    private static LactationView view(
            HerdRow herd, CowRecord record, CowOnDay cow, AssembledLactation assembled, AsOf asOf, Choice choice) {
        Lactation lactation = assembled.lactation();
        AccumulatedYield yield = cow.accumulated(assembled);
        Projection305 projection = cow.projection(assembled);
        return new LactationView(
                herd.code,
                record.shownIdentifier(),
                lactation.parity(),
                lactation.calvingDate().toString(),
                state(assembled.end()),
                lactation.endDate().map(Object::toString).orElse(null),
                DaysInMilk.on(lactation.calvingDate(), lactation.endDate().orElse(asOf.day())),
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                projection.tests() > 0 ? "ok" : "notEnoughData",
                FigureView.of(yield.milk(), choice.explain()),
                FigureView.of(yield.fat(), choice.explain()),
                FigureView.of(yield.protein(), choice.explain()),
                FigureView.of(yield.fatPct(), choice.explain()),
                FigureView.of(yield.proteinPct(), choice.explain()),
                FigureView.of(corrected(choice.correctedMilk(), yield, asOf), choice.explain())
                        .from(yield.milk()),
                CurveView.of(choice.curve().fit(lactation, asOf.day())),
                FigureView.of(projection.milk305(), choice.explain()),
                FigureView.of(projection.fat305().orElseThrow(), choice.explain()),
                FigureView.of(projection.protein305().orElseThrow(), choice.explain()),
                FigureView.of(projection.cellScore305().orElseThrow(), choice.explain()),
                choice.dryOff()
                        .flatMap(planned -> planned.expected(lactation, projection, choice.explain()))
                        .orElse(null),
                choice.daily() ? daily(projection) : null,
                projection.producedKg(),
                projection.expectedRestKg(),
                projection.reliabilityShare(),
                projection.nextTestDay().map(LactationQueries::nextTest).orElse(null),
                assembled.findings().stream().map(WarningView::of).toList());
    }

    private static Figure corrected(CorrectedMilkFormula formula, AccumulatedYield yield, AsOf asOf) {
        if (yield.milk().value().isEmpty()) {
            return Figure.of(formula, "kg", asOf.day())
                    .findings(yield.milk().findings())
                    .inputs(yield.milk().inputs())
                    .build();
        }
        return formula.ofYield(
                yield.milk().orThrow(),
                yield.fat().value(),
                yield.protein().value(),
                OptionalDouble.empty(),
                asOf.day());
    }

    private static List<LactationView.DayView> daily(Projection305 projection) {
        double[] milkKg = projection.dailyMilkKg();
        List<Interval> band = projection.dailyBand(Coverage.EIGHTY_PERCENT);
        return IntStream.range(0, milkKg.length)
                .mapToObj(index -> new LactationView.DayView(
                        index + 1,
                        milkKg[index],
                        new FigureView.Ends(
                                band.get(index).low(), band.get(index).high())))
                .toList();
    }

    private static LactationView.NextTestView nextTest(DayExpectation next) {
        return new LactationView.NextTestView(
                next.date().toString(),
                next.daysInMilk(),
                next.milkKg(),
                new FigureView.Ends(next.interval80().low(), next.interval80().high()),
                new FigureView.Ends(next.interval95().low(), next.interval95().high()));
    }

    private static String state(AssembledLactation.End end) {
        return switch (end) {
            case IN_MILK -> "inMilk";
            case DRIED_OFF -> "driedOff";
            case LEFT -> "left";
            case NOT_RECORDED -> "endNotRecorded";
        };
    }
}
