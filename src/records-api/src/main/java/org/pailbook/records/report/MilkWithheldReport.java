package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.lactation.withheld.WithheldReason;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** Whose milk must stay out of the tank at the end of a day. */
@ApplicationScoped
class MilkWithheldReport implements Report<MilkWithheldReport.Row> {
    private final DecisionLists lists;

    @Inject
    MilkWithheldReport(DecisionLists lists) {
        this.lists = lists;
    }

    record Row(CowRecord record, WithheldReason reason) {}

    @Override
    public String name() {
        return "milk-withheld";
    }

    @Override
    public String meaning() {
        return "One reason why the milk of one cow stays out of the tank at the end of the day. "
                + WithheldMilk.CAUTION;
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.record().shownIdentifier()),
                CowColumns.id(row -> row.record().shownIdentifier()),
                Column.text(
                        "name", "Name as entered", row -> row.record().name().orElse(null)),
                Column.text(
                        "kind",
                        "treatment, treatmentEndNotEntered, foremilk, colostrum",
                        row -> row.reason().kind().wireName()),
                Column.date(
                        "since",
                        "First day",
                        row -> Optional.of(row.reason().since().toLocalDate())),
                Column.text(
                        "until",
                        "As entered, withheld through it; empty while no end is known: treat it as not over",
                        row -> row.reason().until().map(WithholdingEnd::text).orElse(null)),
                Column.text(
                        "said_by",
                        "Prescriber, or who looked; empty if not recorded",
                        row -> row.reason().saidBy()),
                Column.text("why", "In words", row -> row.reason().words()),
                Column.text("caution", "Goes wherever the row goes", row -> WithheldMilk.CAUTION));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        lists.withheld(herd, asOf.day())
                .forEach(line -> line.cow().reasons().forEach(reason -> each.accept(new Row(line.record(), reason))));
    }
}
