package org.pailbook.records.tank;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.TankPickupRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How tank pickups are read, checked and shown. */
@Singleton
public final class TankPickupKind extends HerdRecordKind<TankPickupRow> {

    @Override
    public String name() {
        return "tank-pickups";
    }

    @Override
    public Class<TankPickupRow> entity() {
        return TankPickupRow.class;
    }

    @Override
    protected String dayMember() {
        return "pickedUpAt";
    }

    @Override
    protected String dayColumn() {
        return "picked_up_at";
    }

    @Override
    protected Object keyBesides(TankPickupRow record) {
        return record.tank + " " + record.minute;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("tank", "tank"),
                Column.number("milk_kg", "milkKg"),
                Column.number("milk_litres", "milkLitres"),
                Column.number("fat_pct", "fatPct"),
                Column.number("protein_pct", "proteinPct"),
                Column.number("lactose_pct", "lactosePct"),
                Column.number("scc_thousand_per_ml", "sccThousandPerMl"),
                Column.number("bacteria_thousand_per_ml", "bacteriaThousandPerMl"),
                Column.number("temperature_c", "temperatureC"),
                Column.text("note", "note"));
    }

    @Override
    protected TankPickupRow newRecord() {
        return new TankPickupRow();
    }

    @Override
    protected void readDetails(Fields fields, TankPickupRow record) {
        fields.require("tank");
        record.tank = fields.text("tank", 100);
        record.milkKg = fields.number("milkKg");
        record.milkLitres = fields.number("milkLitres");
        record.fatPct = fields.number("fatPct");
        record.proteinPct = fields.number("proteinPct");
        record.lactosePct = fields.number("lactosePct");
        record.sccThousandPerMl = fields.number("sccThousandPerMl");
        record.bacteriaThousandPerMl = fields.number("bacteriaThousandPerMl");
        record.temperatureC = fields.number("temperatureC");
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(TankPickupRow record, ObjectNode content) {
        put(content, "tank", record.tank);
        put(content, "milkKg", record.milkKg);
        put(content, "milkLitres", record.milkLitres);
        put(content, "fatPct", record.fatPct);
        put(content, "proteinPct", record.proteinPct);
        put(content, "lactosePct", record.lactosePct);
        put(content, "sccThousandPerMl", record.sccThousandPerMl);
        put(content, "bacteriaThousandPerMl", record.bacteriaThousandPerMl);
        put(content, "temperatureC", record.temperatureC);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<TankPickupRow> posted, TankPickupRow replaced) {
        TankPickupRow record = posted.record();
        if (record.milkKg == null && record.milkLitres == null) {
            posted.add(FindingView.error("nothing-measured", posted.pointer(), "has no amount of milk"));
        }
        if (record.milkKg != null && record.milkLitres != null) {
            posted.add(FindingView.error(
                    "two-amounts", posted.pointer("milkLitres"), "send kilograms or litres, whichever was measured"));
        }
        ValueChecks.check(posted, "tank.milkKg", "milkKg", record.milkKg);
        ValueChecks.check(posted, "tank.milkLitres", "milkLitres", record.milkLitres);
        ValueChecks.check(posted, "tank.fatPct", "fatPct", record.fatPct);
        ValueChecks.check(posted, "tank.proteinPct", "proteinPct", record.proteinPct);
        ValueChecks.check(posted, "lactosePct", "lactosePct", record.lactosePct);
        ValueChecks.check(posted, "tank.sccThousandPerMl", "sccThousandPerMl", record.sccThousandPerMl);
        ValueChecks.check(posted, "tank.bacteriaThousandPerMl", "bacteriaThousandPerMl", record.bacteriaThousandPerMl);
        ValueChecks.check(posted, "tank.temperatureC", "temperatureC", record.temperatureC);
    }
}
