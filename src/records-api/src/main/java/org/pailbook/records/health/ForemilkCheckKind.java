package org.pailbook.records.health;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.ForemilkCheckRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How foremilk checks are read, checked and shown. */
@Singleton
public final class ForemilkCheckKind extends EventKind<ForemilkCheckRow> {
    private static final List<String> MILKING_OF_DAY_CODES = List.of("am", "pm", "third");
    private static final List<String> QUARTER_CODES = List.of("LF", "RF", "LR", "RR");
    private static final List<String> FINDING_CODES =
            List.of("normal", "flakes", "watery", "blood", "serous", "noMilk");
    private static final List<String> UDDER_CODES = List.of("normal", "hard", "hot", "painful");
    private static final List<String> ACTION_CODES = List.of("none", "withheld", "sampled", "veterinarianCalled");

    @Override
    public String name() {
        return "foremilk-checks";
    }

    @Override
    public Class<ForemilkCheckRow> entity() {
        return ForemilkCheckRow.class;
    }

    @Override
    protected Object keyBesides(ForemilkCheckRow record) {
        return record.milkingOfDay + " " + record.quarter;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("milking_of_day", "milkingOfDay"),
                Column.text("quarter", "quarter"),
                Column.text("finding", "finding"),
                Column.text("udder", "udder"),
                Column.flag("cow_ill", "cowIll"),
                Column.text("action", "action"),
                Column.text("checked_by", "checkedBy"),
                Column.text("note", "note"));
    }

    @Override
    protected ForemilkCheckRow newRecord() {
        return new ForemilkCheckRow();
    }

    @Override
    protected void readDetails(Fields fields, ForemilkCheckRow record) {
        fields.require("milkingOfDay");
        record.milkingOfDay = fields.code("milkingOfDay", MILKING_OF_DAY_CODES);
        fields.require("quarter");
        record.quarter = fields.code("quarter", QUARTER_CODES);
        fields.require("finding");
        record.finding = fields.code("finding", FINDING_CODES);
        record.udder = fields.code("udder", UDDER_CODES);
        record.cowIll = fields.flag("cowIll");
        record.action = fields.code("action", ACTION_CODES);
        record.checkedBy = fields.text("checkedBy", 100);
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(ForemilkCheckRow record, ObjectNode content) {
        put(content, "milkingOfDay", record.milkingOfDay);
        put(content, "quarter", record.quarter);
        put(content, "finding", record.finding);
        put(content, "udder", record.udder);
        put(content, "cowIll", record.cowIll);
        put(content, "action", record.action);
        put(content, "checkedBy", record.checkedBy);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<ForemilkCheckRow> posted, ForemilkCheckRow replaced, Surroundings surroundings) {
        ForemilkCheckRow record = posted.record();
        checkPresent(posted, surroundings);
        surroundings
                .calvingOnOrBefore(record.animalId, record.date)
                .ifPresent(calved -> posted.inLactationDay(DaysInMilk.on(calved, record.date)));
        boolean abnormal = record.finding != null && !record.finding.equals("normal");
        boolean inflamed = record.udder != null && !record.udder.equals("normal");
        if (abnormal) {
            posted.add(FindingView.warning(
                    "foremilk-abnormal",
                    posted.pointer("finding"),
                    "is not normal: keep her milk out of the tank until you know better"));
        }
        if (abnormal && inflamed || Boolean.TRUE.equals(record.cowIll)) {
            posted.add(FindingView.warning(
                    "see-veterinarian", posted.pointer(), "is a sign to call your veterinarian today"));
        }
    }
}
