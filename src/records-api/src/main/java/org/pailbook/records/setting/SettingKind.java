package org.pailbook.records.setting;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankLimits;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.SettingRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How settings are read, checked and shown. */
@Singleton
public final class SettingKind extends HerdRecordKind<SettingRow> {
    private static final List<String> MILK_UNITS = List.of("kg", "lb");

    private static final List<Member<SettingRow>> MEMBERS = Members.of(SettingRow.class)
            .integer(
                    "waitingDays",
                    0,
                    BreedingSettings.MOST_WAITING_DAYS,
                    record -> record.waitingDays,
                    (record, value) -> record.waitingDays = value)
            .integer(
                    "checkDays",
                    BreedingSettings.FEWEST_CHECK_DAYS,
                    BreedingSettings.MOST_CHECK_DAYS,
                    record -> record.checkDays,
                    (record, value) -> record.checkDays = value)
            .integer(
                    "dryDays",
                    0,
                    BreedingSettings.MOST_DRY_DAYS,
                    record -> record.dryDays,
                    (record, value) -> record.dryDays = value)
            .integer(
                    "colostrumDays",
                    0,
                    WithheldMilk.MOST_COLOSTRUM_DAYS,
                    record -> record.colostrumDays,
                    (record, value) -> record.colostrumDays = value)
            .integer(
                    "highFrom",
                    CellCountCut.LEAST,
                    CellCountCut.MOST,
                    record -> record.highFrom,
                    (record, value) -> record.highFrom = value)
            .code(
                    "tankLimit",
                    TankLimits.all().stream().map(TankLimit::id).toList(),
                    record -> record.tankLimit,
                    (record, value) -> record.tankLimit = value)
            .number("closeCall", record -> record.closeCall, (record, value) -> record.closeCall = value)
            .within("price")
            .code("milkUnit", MILK_UNITS, record -> record.milkUnit, (record, value) -> record.milkUnit = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

    @Override
    public String name() {
        return "settings";
    }

    @Override
    public Class<SettingRow> entity() {
        return SettingRow.class;
    }

    @Override
    protected String dayMember() {
        return "validFrom";
    }

    @Override
    public String dayColumn() {
        return "valid_from";
    }

    @Override
    protected boolean mayLieAhead() {
        return true;
    }

    @Override
    protected List<Member<SettingRow>> members() {
        return MEMBERS;
    }

    @Override
    protected SettingRow newRecord() {
        return new SettingRow();
    }

    @Override
    protected List<Column> detailColumns() {
        List<Column> columns = new ArrayList<>(super.detailColumns());
        columns.addAll(WarningLimits.columns());
        return columns;
    }

    @Override
    protected void readDetails(Fields fields, SettingRow record) {
        super.readDetails(fields, record);
        record.warningLimits = WarningLimits.read(fields);
    }

    @Override
    protected void writeDetails(SettingRow record, ObjectNode content) {
        super.writeDetails(record, content);
        WarningLimits.write(record.warningLimits, content);
    }

    @Override
    protected void checkDetails(Posted<SettingRow> posted, SettingRow replaced) {
        boolean nothingSet = posted.record().warningLimits == null
                && MEMBERS.stream()
                        .allMatch(member ->
                                member.name().equals("note") || member.value().apply(posted.record()) == null);
        if (nothingSet) {
            posted.add(FindingView.error("no-setting", posted.pointer(), "sets nothing"));
        }
        WarningLimits.check(posted);
        checkLimits(posted);
    }
}
