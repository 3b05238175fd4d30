package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.CowCellCounts;
import org.pailbook.lactation.udderhealth.HerdCellCounts;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** The cells of each cow at the herd's last test. */
@ApplicationScoped
class UdderHealthReport implements Report<UdderHealthReport.Row> {
    private final HerdCows cows;
    private final HerdSettings settings;

    @Inject
    UdderHealthReport(HerdCows cows, HerdSettings settings) {
        this.cows = cows;
        this.settings = settings;
    }

    record Row(KnownCow cow, int parity, TestDay test, boolean isHigh, Optional<String> state) {}

    @Override
    public String name() {
        return "udder-health";
    }

    @Override
    public String meaning() {
        return "One cow with her cell count at the herd's last test, in the order in which they were first posted; high from"
                + " the count of the herd's settings, else 200 thousand per mL. " + VeterinaryTrigger.CAUTION;
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.cow().identifier()),
                CowColumns.id(row -> row.cow().identifier()),
                CowColumns.name(Row::cow),
                Column.count("parity", "", "Number of her calvings", Row::parity),
                Column.date(
                        "test_on",
                        "Day of the test",
                        row -> Optional.of(row.test().date())),
                Column.measured(
                        "scc_thousand_per_ml",
                        "1,000/mL",
                        "As entered",
                        row -> row.test().sccThousandPerMl()),
                Column.computed(
                        "cell_score",
                        "",
                        2,
                        "log2(cells / 100) + 3",
                        row -> OptionalDouble.of(SomaticCellScore.score(
                                row.test().sccThousandPerMl().orElseThrow()))),
                Column.text(
                        "is_high",
                        "yes or no; a low count does not rule out an infection",
                        row -> row.isHigh() ? "yes" : "no"),
                Column.text(
                        "state",
                        "clean, new, cured, chronic against the test before; empty if that is missing, nearer than 15 or further than 70 days",
                        row -> row.state().orElse(null)),
                Column.text("caution", "Goes wherever the row goes", row -> VeterinaryTrigger.CAUTION));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        CellCountCut cut = settings.on(herd, asOf.day()).highFrom(OptionalInt.empty());
        List<KnownCow> all = new ArrayList<>();
        List<CowCellCounts> counts = new ArrayList<>();
        cows.each(herd, asOf.day(), cow -> {
            all.add(cow);
            counts.add(cow.onDay().cellCounts());
        });
        HerdCellCounts cells = HerdCellCounts.of(counts, cut, asOf.day());
        for (int i = 0; i < all.size(); i++) {
            CowCellCounts count = counts.get(i);
            KnownCow cow = all.get(i);
            count.lastCounted(asOf.day())
                    .filter(test -> !count.hasLeft() && cells.isOfLastTest(test.date()))
                    .ifPresent(test -> each.accept(new Row(
                            cow,
                            count.lastParity(),
                            test,
                            cut.isHigh(test),
                            count.lastPair(cut, asOf.day())
                                    .map(pair -> pair.state().wireName()))));
        }
    }

    @Override
    public PublishedMethod method(Row row) {
        return SomaticCellScore.SCS;
    }

    @Override
    public List<Finding> findings(Row row) {
        return row.cow().findings();
    }
}
