package org.pailbook.records.summary;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.micrometer.core.annotation.Timed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.lactation.summary.HerdTestDay;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.computed.InventedHerd;
import org.pailbook.records.computed.Rehearsed;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.OrNull;

/** Computes summaries from what is recorded. */
@ApplicationScoped
class SummaryQueries implements Rehearsed {
    private final CowRecords records;
    private final HerdLearning learning;
    private final HerdMeasureQueries measures;
    private final CowDecisionQueries decisions;
    private final ObjectMapper mapper;

    @Inject
    SummaryQueries(
            CowRecords records,
            HerdLearning learning,
            HerdMeasureQueries measures,
            CowDecisionQueries decisions,
            ObjectMapper mapper) {
        this.records = records;
        this.learning = learning;
        this.measures = measures;
        this.decisions = decisions;
        this.mapper = mapper;
    }

    CowSummaryView ofCow(HerdRow herd, AnimalRow animal, AsOf asOf) {
        CowRecord record = records.ofAnimal(herd, animal, asOf.day());
        CowOnDay cow = record.onDay(asOf.day()).withHerd(learning.of(herd, asOf.day()));
        Optional<AssembledLactation> latest = cow.lactations().latest();
        Optional<Lactation> lactation = latest.map(AssembledLactation::lactation);
        List<CowSummaryView.EarlierLactationView> earlier = cow.lactations().lactations().stream()
                .limit(Math.max(0, cow.lactations().lactations().size() - 1L))
                .map(before -> new CowSummaryView.EarlierLactationView(
                        before.lactation().parity(),
                        before.lactation().calvingDate().toString(),
                        FigureView.of(cow.accumulated(before).milk(), false)))
                .toList();
        Stream<Finding> findings = Stream.concat(
                cow.lactations().findings().stream(),
                latest.map(AssembledLactation::findings).orElse(List.of()).stream());
        return new CowSummaryView(
                herd.code,
                record.shownIdentifier(),
                record.name().orElse(null),
                record.breed().orElse(null),
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                latest.isPresent() ? "ok" : "notEnoughData",
                cow.state().wireName(),
                lactation.map(Lactation::parity).orElse(null),
                lactation.map(Lactation::calvingDate).map(Object::toString).orElse(null),
                cow.daysInMilk().isPresent() ? cow.daysInMilk().getAsInt() : null,
                cow.lastTestDay()
                        .map(test -> lastTest(test, lactation.orElseThrow(), asOf.day()))
                        .orElse(null),
                latest.map(of -> FigureView.of(cow.accumulated(of).milk(), false))
                        .orElse(null),
                latest.map(of -> FigureView.of(cow.milkProjection(of).milk305(), false))
                        .orElse(null),
                earlier,
                decisions.of(herd, record, cow, asOf.day()),
                findings.map(WarningView::of).toList());
    }

    @Timed(value = "pailbook.herd.summary", description = "Time a herd's summary takes")
    HerdSummaryView ofHerd(HerdRow herd, AsOf asOf) {
        List<CowRecord> all = records.ofHerd(herd, asOf.day()).stream()
                .filter(record -> record.isBornBy(asOf.day()))
                .toList();
        // the herd is learned on another processor while this one reads the rest
        CompletableFuture<List<CowOnDay>> taught =
                CompletableFuture.supplyAsync(() -> learning.teach(herd, asOf.day(), onDay(all, asOf)));
        HerdMeasureQueries.Recorded read = measures.read(herd, all, asOf.day());
        return view(herd, asOf, taught.join(), read);
    }

    @Override
    public void rehearse(InventedHerd herd, AsOf asOf, OutputStream nowhere) throws IOException {
        List<CowOnDay> cows = learning.teach(herd.row(), asOf.day(), onDay(herd.records(), asOf));
        HerdMeasureQueries.Recorded read = measures.read(herd.row(), herd.records(), herd.histories(), asOf.day());
        nowhere.write(
                mapper.writeValueAsString(view(herd.row(), asOf, cows, read)).getBytes(StandardCharsets.UTF_8));
    }

    private static List<CowOnDay> onDay(List<CowRecord> records, AsOf asOf) {
        return records.parallelStream().map(record -> record.onDay(asOf.day())).toList();
    }

    private HerdSummaryView view(HerdRow herd, AsOf asOf, List<CowOnDay> cows, HerdMeasureQueries.Recorded read) {
        HerdOnDay day = HerdOnDay.of(cows, asOf.day());
        List<HerdSummaryView.CowLineView> lines = lines(read.records(), cows, day);
        return new HerdSummaryView(
                herd.code,
                herd.name,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                day.lastTestDate().isPresent() ? "ok" : "notEnoughData",
                new HerdSummaryView.CountsView(
                        cows.size(),
                        day.count(CowState.IN_MILK),
                        day.count(CowState.DRY),
                        day.count(CowState.NOT_CALVED),
                        day.count(CowState.LEFT)),
                FigureView.of(day.meanDaysInMilk(), true),
                day.lastTestDate().map(LocalDate::toString).orElse(null),
                FigureView.of(day.milkOfLastTestDate(), true),
                FigureView.of(day.meanMilkOfLastTestDate(), true),
                FigureView.of(day.fatPctOfLastTestDate(), true),
                FigureView.of(day.proteinPctOfLastTestDate(), true),
                FigureView.of(day.sccOfLastTestDate(), true),
                FigureView.of(day.meanSomaticCellScore(), true),
                FigureView.of(day.meanProjection305(), true),
                measures.of(read, day, cows, asOf.day()),
                Stream.concat(
                                day.lacks().stream(),
                                day.lastTestDay().map(HerdTestDay::findings).orElse(List.of()).stream())
                        .map(WarningView::of)
                        .toList(),
                lines);
    }

    /** Of the cows in milk, longest in milk first. */
    private static List<HerdSummaryView.CowLineView> lines(List<CowRecord> all, List<CowOnDay> cows, HerdOnDay day) {
        List<Projection305> projections = day.milkProjections();
        Optional<HerdTestDay> test = day.lastTestDay();
        int[] inMilk = IntStream.range(0, cows.size())
                .filter(i -> cows.get(i).state() == CowState.IN_MILK)
                .toArray();
        return IntStream.range(0, inMilk.length)
                .parallel()
                .mapToObj(i -> line(all.get(inMilk[i]), cows.get(inMilk[i]), projections.get(i), test))
                .sorted(Comparator.comparingInt(HerdSummaryView.CowLineView::daysInMilk)
                        .reversed())
                .toList();
    }

    private static HerdSummaryView.CowLineView line(
            CowRecord record, CowOnDay cow, Projection305 projection, Optional<HerdTestDay> ofHerd) {
        AssembledLactation latest = cow.lactations().latest().orElseThrow();
        Figure projected = projection.milk305();
        Figure accumulated = cow.accumulated(latest).milk();
        Optional<TestDay> last = cow.lastTestDay();
        return new HerdSummaryView.CowLineView(
                record.shownIdentifier(),
                record.name().orElse(null),
                latest.lactation().parity(),
                cow.daysInMilk().orElseThrow(),
                last.map(test -> test.date().toString()).orElse(null),
                last.map(test -> OrNull.of(test.milkKg())).orElse(null),
                OrNull.of(accumulated.value()),
                projected.orThrow(),
                ends(projected, Coverage.EIGHTY_PERCENT),
                ends(projected, Coverage.NINETY_FIVE_PERCENT),
                projection.tests(),
                Stream.of(
                                latest.findings(),
                                projected.findings(),
                                accumulated.findings(),
                                ofHerd.flatMap(one -> one.ofCow(cow.animal())).stream()
                                        .toList())
                        .flatMap(List::stream)
                        .map(finding -> finding.code().code())
                        .distinct()
                        .toList());
    }

    private static CowSummaryView.LastTestView lastTest(TestDay test, Lactation lactation, LocalDate asOf) {
        return new CowSummaryView.LastTestView(
                test.date().toString(),
                lactation.daysInMilk(test.date()),
                OrNull.of(test.milkKg()),
                OrNull.of(test.fatPct()),
                OrNull.of(test.proteinPct()),
                OrNull.of(test.sccThousandPerMl()),
                FigureView.of(CorrectedMilkFormulas.RECOMMENDED.ofTestDay(test, asOf), false),
                FigureView.of(SomaticCellScore.SCS.ofTestDay(test, asOf), false));
    }

    private static FigureView.Ends ends(Figure figure, Coverage coverage) {
        Interval interval = figure.interval(coverage.share()).orElseThrow();
        return new FigureView.Ends(interval.low(), interval.high());
    }
}
