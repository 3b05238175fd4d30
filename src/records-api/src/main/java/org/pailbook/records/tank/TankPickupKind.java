package org.pailbook.records.tank;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.TankPickupRow;
import org.pailbook.records.wire.FindingView;

/** How tank pickups are read, checked and shown. */
@Singleton
public final class TankPickupKind extends HerdRecordKind<TankPickupRow> {
    private static final List<Member<TankPickupRow>> MEMBERS = Members.of(TankPickupRow.class)
            .text("tank", 100, record -> record.tank, (record, value) -> record.tank = value)
            .needed()
            .number("milkKg", record -> record.milkKg, (record, value) -> record.milkKg = value)
            .within("tank.milkKg")
            .number("milkLitres", record -> record.milkLitres, (record, value) -> record.milkLitres = value)
            .within("tank.milkLitres")
            .number("fatPct", record -> record.fatPct, (record, value) -> record.fatPct = value)
            .within("tank.fatPct")
            .number("proteinPct", record -> record.proteinPct, (record, value) -> record.proteinPct = value)
            .within("tank.proteinPct")
            .number("lactosePct", record -> record.lactosePct, (record, value) -> record.lactosePct = value)
            .within("lactosePct")
            .number(
                    "sccThousandPerMl",
                    record -> record.sccThousandPerMl,
                    (record, value) -> record.sccThousandPerMl = value)
            .within("tank.sccThousandPerMl")
            .number(
                    "bacteriaThousandPerMl",
                    record -> record.bacteriaThousandPerMl,
                    (record, value) -> record.bacteriaThousandPerMl = value)
            .within("tank.bacteriaThousandPerMl")
            .number("temperatureC", record -> record.temperatureC, (record, value) -> record.temperatureC = value)
            .within("tank.temperatureC")
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    public String dayColumn() {
        return "picked_up_at";
    }

    @Override
    protected Object keyBesides(TankPickupRow record) {
        return record.tank + " " + record.minute;
    }

    @Override
    protected List<Member<TankPickupRow>> members() {
        return MEMBERS;
    }

    @Override
    protected TankPickupRow newRecord() {
        return new TankPickupRow();
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
        checkLimits(posted);
    }
}
