package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.DayExpectation;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.InventedHerd;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.computed.Rehearsed;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** What each cow in milk is expected to give in 305 days. */
@ApplicationScoped
class ProjectionsReport implements Report<ProjectionsReport.Row>, Rehearsed {
    private final HerdCows cows;

    @Inject
    ProjectionsReport(HerdCows cows) {
        this.cows = cows;
    }

    /** What several columns read is made once. */
    record Row(
            KnownCow cow,
            AssembledLactation of,
            Projection305 projection,
            Figure milk305,
            Optional<Figure> fat305,
            Optional<Figure> protein305,
            Optional<DayExpectation> nextTestDay) {
        static Row of(KnownCow cow) {
            AssembledLactation latest = cow.onDay().lactations().latest().orElseThrow();
            Projection305 projection = cow.onDay().projection(latest);
            return new Row(
                    cow,
                    latest,
                    projection,
                    projection.milk305(),
                    projection.fat305(),
                    projection.protein305(),
                    projection.nextTestDay());
        }

        private OptionalDouble milkEnd(Coverage coverage, boolean isLow) {
            Optional<Interval> interval = milk305.interval(coverage.share());
            return interval.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(
                            isLow ? interval.get().low() : interval.get().high());
        }

        private OptionalDouble value(Optional<Figure> figure) {
            return figure.map(Figure::value).orElse(OptionalDouble.empty());
        }
    }

    @Override
    public String name() {
        return "projections";
    }

    @Override
    public String meaning() {
        return "One cow in milk and her yield of days 1 to 305 if she is milked to day 305; in the order in which they were first posted";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.cow().identifier()),
                CowColumns.id(row -> row.cow().identifier()),
                CowColumns.name(Row::cow),
                Column.text(
                        "breed",
                        "ICAR code or text, as entered",
                        row -> row.cow().animal().breed),
                Column.count(
                        "parity",
                        "",
                        "1 for the first lactation",
                        row -> row.of().lactation().parity()),
                Column.date(
                        "calved_on",
                        "The calving it began with",
                        row -> Optional.of(row.of().lactation().calvingDate())),
                Column.count(
                        "days_in_milk",
                        "d",
                        "The calving day is 0",
                        row -> row.cow().onDay().daysInMilk().orElseThrow()),
                Column.count(
                        "tests",
                        "",
                        "Tests the projection was made from",
                        row -> row.projection().tests()),
                Column.date(
                        "last_test_on",
                        "Her last test day",
                        row -> row.cow().onDay().lastTestDay().map(TestDay::date)),
                Column.measured(
                        "last_milk_kg",
                        "kg",
                        "Milk of 24 hours on that day",
                        row -> row.cow()
                                .onDay()
                                .lastTestDay()
                                .map(TestDay::milkKg)
                                .orElse(OptionalDouble.empty())),
                Column.computed(
                        "projected_305_kg",
                        "kg",
                        0,
                        "Milk of days 1 to 305",
                        row -> row.milk305().value()),
                Column.computed(
                        "projected_305_low_kg",
                        "kg",
                        0,
                        "Lower end of the 80 % interval",
                        row -> row.milkEnd(Coverage.EIGHTY_PERCENT, true)),
                Column.computed(
                        "projected_305_high_kg",
                        "kg",
                        0,
                        "Upper end of the 80 % interval",
                        row -> row.milkEnd(Coverage.EIGHTY_PERCENT, false)),
                Column.computed(
                        "projected_305_low_95_kg",
                        "kg",
                        0,
                        "Lower end of the 95 % interval",
                        row -> row.milkEnd(Coverage.NINETY_FIVE_PERCENT, true)),
                Column.computed(
                        "projected_305_high_95_kg",
                        "kg",
                        0,
                        "Upper end of the 95 % interval",
                        row -> row.milkEnd(Coverage.NINETY_FIVE_PERCENT, false)),
                Column.computed(
                        "projected_305_fat_kg", "kg", 1, "Fat of days 1 to 305", row -> row.value(row.fat305())),
                Column.computed(
                        "projected_305_protein_kg",
                        "kg",
                        1,
                        "Protein of days 1 to 305",
                        row -> row.value(row.protein305())),
                Column.computed(
                        "produced_kg",
                        "kg",
                        0,
                        "Of it: milk up to the last test",
                        row -> OptionalDouble.of(row.projection().producedKg())),
                Column.computed(
                        "reliability_share",
                        "",
                        3,
                        "Share of the differences between cows that her tests explain, 0 to 1",
                        row -> OptionalDouble.of(row.projection().reliabilityShare())),
                Column.date(
                        "next_test_on",
                        "When her next test is to be expected",
                        row -> row.nextTestDay().map(DayExpectation::date)),
                Column.computed(
                        "next_test_milk_kg",
                        "kg",
                        1,
                        "What it should show, 24 hours",
                        row -> row.nextTestDay()
                                .map(next -> OptionalDouble.of(next.milkKg()))
                                .orElse(OptionalDouble.empty())),
                Column.computed(
                        "next_test_low_kg",
                        "kg",
                        1,
                        "Lower end of its 80 % interval",
                        row -> row.nextTestDay()
                                .map(next -> OptionalDouble.of(next.interval80().low()))
                                .orElse(OptionalDouble.empty())),
                Column.computed(
                        "next_test_high_kg",
                        "kg",
                        1,
                        "Upper end of its 80 % interval",
                        row -> row.nextTestDay()
                                .map(next -> OptionalDouble.of(next.interval80().high()))
                                .orElse(OptionalDouble.empty())));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        rows(herd, asOf, Function.identity(), each);
    }

    @Override
    public <T> void rows(HerdRow herd, AsOf asOf, Function<Row, T> made, Consumer<T> each) {
        cows.each(
                herd,
                asOf.day(),
                cow -> cow.onDay().state() == CowState.IN_MILK
                        ? Optional.of(made.apply(Row.of(cow)))
                        : Optional.empty(),
                each);
    }

    @Override
    public void rehearse(InventedHerd herd, AsOf asOf, OutputStream nowhere) throws IOException {
        writeCsv(herd.row(), asOf, false, nowhere);
    }

    @Override
    public PublishedMethod method(Row row) {
        return row.milk305().method();
    }

    @Override
    public List<Finding> findings(Row row) {
        return Stream.concat(row.of().findings().stream(), row.milk305().findings().stream())
                .toList();
    }
}
