package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** Every lactation and what it gave so far. */
@ApplicationScoped
class LactationsReport implements Report<LactationsReport.Row> {
    private final HerdCows cows;

    @Inject
    LactationsReport(HerdCows cows) {
        this.cows = cows;
    }

    record Row(KnownCow cow, AssembledLactation of, AccumulatedYield yield, AsOf asOf) {}

    @Override
    public String name() {
        return "lactations";
    }

    @Override
    public String meaning() {
        return "One lactation of one cow with its yield so far; cow by cow, by calving";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.cow().identifier()),
                CowColumns.id(row -> row.cow().identifier()),
                CowColumns.name(Row::cow),
                Column.count(
                        "parity",
                        "",
                        "1 for the first lactation",
                        row -> row.of().lactation().parity()),
                Column.date(
                        "calved_on",
                        "The calving it began with",
                        row -> Optional.of(row.of().lactation().calvingDate())),
                Column.text(
                        "state",
                        "inMilk, driedOff, left or endNotRecorded",
                        row -> state(row.of().end())),
                Column.date(
                        "ended_on",
                        "Last day milked, if it has ended",
                        row -> row.of().lactation().endDate()),
                Column.count(
                        "days_in_milk",
                        "d",
                        "On the day, or on the last day milked",
                        row -> DaysInMilk.on(
                                row.of().lactation().calvingDate(),
                                row.of().lactation().endDate().orElse(row.asOf().day()))),
                Column.count(
                        "milk_tests",
                        "",
                        "Tests the milk was made from",
                        row -> row.yield().milkTests()),
                Column.count(
                        "to_days_in_milk",
                        "d",
                        "Last day counted, 305 at most; empty without a yield",
                        row -> row.yield().milk().value().isPresent()
                                ? row.yield().toDaysInMilk()
                                : null),
                Column.computed(
                        "accumulated_milk_kg",
                        "kg",
                        1,
                        "Milk from day 1 to that day",
                        row -> row.yield().milk().value()),
                Column.computed(
                        "accumulated_fat_kg",
                        "kg",
                        2,
                        "Fat of these days",
                        row -> row.yield().fat().value()),
                Column.computed(
                        "accumulated_protein_kg",
                        "kg",
                        2,
                        "Protein of these days",
                        row -> row.yield().protein().value()),
                Column.computed(
                        "fat_pct",
                        "%",
                        3,
                        "Fat of all that milk",
                        row -> row.yield().fatPct().value()),
                Column.computed(
                        "protein_pct",
                        "%",
                        3,
                        "Protein of all that milk",
                        row -> row.yield().proteinPct().value()));
    }

    private static String state(AssembledLactation.End end) {
        return switch (end) {
            case IN_MILK -> "inMilk";
            case DRIED_OFF -> "driedOff";
            case LEFT -> "left";
            case NOT_RECORDED -> "endNotRecorded";
        };
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        cows.each(herd, asOf.day(), cow -> {
            for (AssembledLactation of : cow.onDay().lactations().lactations()) {
                each.accept(new Row(cow, of, cow.onDay().accumulated(of), asOf));
            }
        });
    }

    @Override
    public PublishedMethod method(Row row) {
        return row.yield().milk().method();
    }

    @Override
    public List<Finding> findings(Row row) {
        return Stream.concat(row.of().findings().stream(), row.yield().milk().findings().stream())
                .toList();
    }
}
