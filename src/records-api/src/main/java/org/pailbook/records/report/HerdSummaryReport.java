package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** The herd at a glance, one figure a row. */
@ApplicationScoped
class HerdSummaryReport implements Report<HerdSummaryReport.Row> {
    private final HerdCows cows;

    @Inject
    HerdSummaryReport(HerdCows cows) {
        this.cows = cows;
    }

    /** @param computed empty for a plain count */
    record Row(String figure, String unit, OptionalDouble value, Optional<Figure> computed) {
        static Row count(String figure, int number) {
            return new Row(figure, "", OptionalDouble.of(number), Optional.empty());
        }

        static Row of(String name, Figure figure) {
            return new Row(name, figure.unit(), figure.value(), Optional.of(figure));
        }

        private OptionalDouble end(boolean isLow) {
            Optional<Interval> interval = computed.flatMap(figure -> figure.interval(Coverage.EIGHTY_PERCENT.share()));
            return interval.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(
                            isLow ? interval.get().low() : interval.get().high());
        }
    }

    @Override
    public String name() {
        return "herd-summary";
    }

    @Override
    public String meaning() {
        return "One figure of the herd; the order of the figures is fixed, new ones are added at the end";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                Column.text("figure", "Which figure", Row::figure),
                Column.text("unit", "Its unit; empty for a count", Row::unit),
                Column.computed("value", "", 3, "In that unit", Row::value),
                Column.computed("low", "", 3, "Lower end of its 80 % interval, where it has one", row -> row.end(true)),
                Column.computed(
                        "high", "", 3, "Upper end of its 80 % interval, where it has one", row -> row.end(false)),
                Column.date(
                        "last_test_on",
                        "Latest day on which a cow was tested, for figures of that day",
                        row -> row.computed()
                                .filter(figure -> row.figure().endsWith("_of_last_test_day"))
                                .flatMap(figure -> figure.inputs().stream()
                                        .filter(input -> input.isUsed())
                                        .map(input -> input.date())
                                        .max(java.util.Comparator.naturalOrder()))));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        HerdOnDay day = HerdOnDay.of(
                cows.all(herd, asOf.day()).stream().map(KnownCow::onDay).toList(), asOf.day());
        each.accept(Row.count("cows_in_milk", day.count(CowState.IN_MILK)));
        each.accept(Row.count("cows_dry", day.count(CowState.DRY)));
        each.accept(Row.count("animals_not_calved", day.count(CowState.NOT_CALVED)));
        each.accept(Row.count("animals_left", day.count(CowState.LEFT)));
        each.accept(Row.of("mean_days_in_milk", day.meanDaysInMilk()));
        each.accept(Row.of("milk_of_last_test_day", day.milkOfLastTestDate()));
        each.accept(Row.of("mean_milk_of_last_test_day", day.meanMilkOfLastTestDate()));
        each.accept(Row.of("fat_of_last_test_day", day.fatPctOfLastTestDate()));
        each.accept(Row.of("protein_of_last_test_day", day.proteinPctOfLastTestDate()));
        each.accept(Row.of("somatic_cells_of_last_test_day", day.sccOfLastTestDate()));
        each.accept(Row.of("mean_somatic_cell_score_of_last_test_day", day.meanSomaticCellScore()));
        each.accept(Row.of("mean_projected_305_milk", day.meanProjection305()));
    }

    @Override
    public PublishedMethod method(Row row) {
        return row.computed().map(Figure::method).orElse(null);
    }

    @Override
    public List<Finding> findings(Row row) {
        return row.computed().map(Figure::findings).orElse(List.of());
    }
}
