package org.pailbook.records.tank;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.TankReadingRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How tank readings are read, checked and shown. */
@Singleton
public final class TankReadingKind extends HerdRecordKind<TankReadingRow> {

    @Override
    public String name() {
        return "tank-readings";
    }

    @Override
    public Class<TankReadingRow> entity() {
        return TankReadingRow.class;
    }

    @Override
    protected String dayMember() {
        return "readAt";
    }

    @Override
    protected String dayColumn() {
        return "read_at";
    }

    @Override
    protected Object keyBesides(TankReadingRow record) {
        return record.tank + " " + record.minute;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("tank", "tank"),
                Column.number("milk_kg", "milkKg"),
                Column.number("milk_litres", "milkLitres"),
                Column.number("temperature_c", "temperatureC"),
                Column.text("note", "note"));
    }

    @Override
    protected TankReadingRow newRecord() {
        return new TankReadingRow();
    }

    @Override
    protected void readDetails(Fields fields, TankReadingRow record) {
        fields.require("tank");
        record.tank = fields.text("tank", 100);
        record.milkKg = fields.number("milkKg");
        record.milkLitres = fields.number("milkLitres");
        record.temperatureC = fields.number("temperatureC");
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(TankReadingRow record, ObjectNode content) {
        put(content, "tank", record.tank);
        put(content, "milkKg", record.milkKg);
        put(content, "milkLitres", record.milkLitres);
        put(content, "temperatureC", record.temperatureC);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<TankReadingRow> posted, TankReadingRow replaced) {
        TankReadingRow record = posted.record();
        if (record.milkKg == null && record.milkLitres == null && record.temperatureC == null) {
            posted.add(FindingView.error("nothing-measured", posted.pointer(), "has no measured value"));
        }
        if (record.milkKg != null && record.milkLitres != null) {
            posted.add(FindingView.error(
                    "two-amounts", posted.pointer("milkLitres"), "send kilograms or litres, whichever was measured"));
        }
        ValueChecks.check(posted, "tank.milkKg", "milkKg", record.milkKg);
        ValueChecks.check(posted, "tank.milkLitres", "milkLitres", record.milkLitres);
        ValueChecks.check(posted, "tank.temperatureC", "temperatureC", record.temperatureC);
    }
}
