package org.pailbook.records.tank;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.MilkUseRow;
import org.pailbook.records.wire.Fields;

/** How uses of milk are read, checked and shown. */
@Singleton
public final class MilkUseKind extends HerdRecordKind<MilkUseRow> {
    private static final List<String> PURPOSE_CODES =
            List.of("calves", "household", "cheese", "directSale", "discarded", "other");

    @Override
    public String name() {
        return "milk-uses";
    }

    @Override
    public Class<MilkUseRow> entity() {
        return MilkUseRow.class;
    }

    @Override
    protected Object keyBesides(MilkUseRow record) {
        return record.purpose;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("purpose", "purpose"), Column.number("milk_kg", "milkKg"), Column.text("note", "note"));
    }

    @Override
    protected MilkUseRow newRecord() {
        return new MilkUseRow();
    }

    @Override
    protected void readDetails(Fields fields, MilkUseRow record) {
        fields.require("purpose");
        record.purpose = fields.code("purpose", PURPOSE_CODES);
        fields.require("milkKg");
        record.milkKg = fields.number("milkKg");
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(MilkUseRow record, ObjectNode content) {
        put(content, "purpose", record.purpose);
        put(content, "milkKg", record.milkKg);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<MilkUseRow> posted, MilkUseRow replaced) {
        ValueChecks.check(posted, "milkUse.milkKg", "milkKg", posted.record().milkKg);
    }
}
