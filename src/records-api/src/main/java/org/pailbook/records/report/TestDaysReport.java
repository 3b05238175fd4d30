package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** Every test day. */
@ApplicationScoped
class TestDaysReport implements Report<TestDaysReport.Row> {
    private final HerdCows cows;

    @Inject
    TestDaysReport(HerdCows cows) {
        this.cows = cows;
    }

    /** @param of the lactation she was in; empty for a test before her first calving */
    record Row(KnownCow cow, Optional<AssembledLactation> of, TestDay test) {}

    @Override
    public String name() {
        return "test-days";
    }

    @Override
    public String meaning() {
        return "One test day of one cow, as entered; cow by cow, by date";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.cow().identifier()),
                CowColumns.id(row -> row.cow().identifier()),
                CowColumns.name(Row::cow),
                Column.date(
                        "date",
                        "Day of the test, in the herd's zone",
                        row -> Optional.of(row.test().date())),
                Column.count(
                        "parity",
                        "",
                        "Lactation the test belongs to",
                        row -> row.of().map(of -> of.lactation().parity()).orElse(null)),
                Column.count(
                        "days_in_milk",
                        "d",
                        "The calving day is 0",
                        row -> row.of()
                                .map(of -> of.lactation().daysInMilk(row.test().date()))
                                .orElse(null)),
                Column.measured(
                        "milk_kg", "kg", "Milk of 24 hours", row -> row.test().milkKg()),
                Column.measured(
                        "fat_pct",
                        "%",
                        "Fat, percent by mass",
                        row -> row.test().fatPct()),
                Column.measured(
                        "protein_pct",
                        "%",
                        "Protein, percent by mass",
                        row -> row.test().proteinPct()),
                Column.measured(
                        "lactose_pct",
                        "%",
                        "Lactose, percent by mass",
                        row -> row.test().lactosePct()),
                Column.measured(
                        "scc_thousand_per_ml",
                        "1,000/mL",
                        "Somatic cells",
                        row -> row.test().sccThousandPerMl()));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        cows.each(herd, asOf.day(), cow -> {
            for (TestDay test : cow.onDay().lactations().testsBeforeFirstCalving()) {
                each.accept(new Row(cow, Optional.empty(), test));
            }
            for (AssembledLactation of : cow.onDay().lactations().lactations()) {
                for (TestDay test : of.lactation().testDays()) {
                    each.accept(new Row(cow, Optional.of(of), test));
                }
            }
        });
    }

    @Override
    public List<Finding> findings(Row row) {
        return row.of().map(AssembledLactation::findings).orElse(List.of()).stream()
                .filter(finding ->
                        finding.date().filter(row.test().date()::equals).isPresent())
                .toList();
    }
}
