package org.pailbook.records.setting;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
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
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.SettingRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How settings are read, checked and shown. */
@Singleton
public final class SettingKind extends HerdRecordKind<SettingRow> {
    private static final List<String> MILK_UNITS = List.of("kg", "lb");

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
    protected String dayColumn() {
        return "valid_from";
    }

    @Override
    protected boolean mayLieAhead() {
        return true;
    }

    @Override
    protected List<Column> detailColumns() {
        List<Column> columns = new ArrayList<>(List.of(
                Column.number("waiting_days", "waitingDays"),
                Column.number("check_days", "checkDays"),
                Column.number("dry_days", "dryDays"),
                Column.number("colostrum_days", "colostrumDays"),
                Column.number("high_from", "highFrom"),
                Column.text("tank_limit", "tankLimit"),
                Column.number("close_call", "closeCall"),
                Column.text("milk_unit", "milkUnit"),
                Column.text("note", "note")));
        columns.addAll(WarningLimits.columns());
        return columns;
    }

    @Override
    protected SettingRow newRecord() {
        return new SettingRow();
    }

    @Override
    protected void readDetails(Fields fields, SettingRow record) {
        record.waitingDays = fields.integer("waitingDays", 0, BreedingSettings.MOST_WAITING_DAYS);
        record.checkDays =
                fields.integer("checkDays", BreedingSettings.FEWEST_CHECK_DAYS, BreedingSettings.MOST_CHECK_DAYS);
        record.dryDays = fields.integer("dryDays", 0, BreedingSettings.MOST_DRY_DAYS);
        record.colostrumDays = fields.integer("colostrumDays", 0, WithheldMilk.MOST_COLOSTRUM_DAYS);
        record.highFrom = fields.integer("highFrom", CellCountCut.LEAST, CellCountCut.MOST);
        record.tankLimit = fields.code(
                "tankLimit", TankLimits.all().stream().map(TankLimit::id).toList());
        record.closeCall = fields.number("closeCall");
        record.milkUnit = fields.code("milkUnit", MILK_UNITS);
        record.warningLimits = WarningLimits.read(fields);
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(SettingRow record, ObjectNode content) {
        writeSettings(record, content);
        put(content, "note", record.note);
    }

    private static void writeSettings(SettingRow record, ObjectNode content) {
        put(content, "waitingDays", record.waitingDays);
        put(content, "checkDays", record.checkDays);
        put(content, "dryDays", record.dryDays);
        put(content, "colostrumDays", record.colostrumDays);
        put(content, "highFrom", record.highFrom);
        put(content, "tankLimit", record.tankLimit);
        put(content, "closeCall", record.closeCall);
        put(content, "milkUnit", record.milkUnit);
        WarningLimits.write(record.warningLimits, content);
    }

    @Override
    protected void checkDetails(Posted<SettingRow> posted, SettingRow replaced) {
        ObjectNode settings = JsonNodeFactory.instance.objectNode();
        writeSettings(posted.record(), settings);
        if (settings.isEmpty()) {
            posted.add(FindingView.error("no-setting", posted.pointer(), "sets nothing"));
        }
        WarningLimits.check(posted);
        ValueChecks.check(posted, "price", "closeCall", posted.record().closeCall);
    }
}
