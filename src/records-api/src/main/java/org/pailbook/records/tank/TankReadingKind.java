package org.pailbook.records.tank;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.TankReadingRow;
import org.pailbook.records.wire.FindingView;

/** How tank readings are read, checked and shown. */
@Singleton
public final class TankReadingKind extends HerdRecordKind<TankReadingRow> {
    private static final List<Member<TankReadingRow>> MEMBERS = Members.of(TankReadingRow.class)
            .text("tank", 100, record -> record.tank, (record, value) -> record.tank = value)
            .needed()
            .number("milkKg", record -> record.milkKg, (record, value) -> record.milkKg = value)
            .within("tank.milkKg")
            .number("milkLitres", record -> record.milkLitres, (record, value) -> record.milkLitres = value)
            .within("tank.milkLitres")
            .number("temperatureC", record -> record.temperatureC, (record, value) -> record.temperatureC = value)
            .within("tank.temperatureC")
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    public String dayColumn() {
        return "read_at";
    }

    @Override
    protected Object keyBesides(TankReadingRow record) {
        return record.tank + " " + record.minute;
    }

    @Override
    protected List<Member<TankReadingRow>> members() {
        return MEMBERS;
    }

    @Override
    protected TankReadingRow newRecord() {
        return new TankReadingRow();
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
        checkLimits(posted);
    }
}
