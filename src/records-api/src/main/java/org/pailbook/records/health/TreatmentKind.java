package org.pailbook.records.health;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.TreatmentRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How treatments are read, checked and shown. */
@Singleton
public final class TreatmentKind extends EventKind<TreatmentRow> {

    @Override
    public String name() {
        return "treatments";
    }

    @Override
    public Class<TreatmentRow> entity() {
        return TreatmentRow.class;
    }

    @Override
    protected String dayMember() {
        return "startedOn";
    }

    @Override
    protected String dayColumn() {
        return "started_on";
    }

    @Override
    protected Object keyBesides(TreatmentRow record) {
        return record.productName;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("product_name", "productName"),
                Column.text("diagnosis", "diagnosis"),
                Column.text("dose", "dose"),
                Column.text("route", "route"),
                Column.text("batch", "batch"),
                Column.text("prescriber", "prescriber"),
                Column.text("ended_on", "endedOn"),
                Column.text("milk_withheld_until", "milkWithheldUntil"),
                Column.text("meat_withheld_until", "meatWithheldUntil"),
                Column.text("note", "note"));
    }

    @Override
    protected TreatmentRow newRecord() {
        return new TreatmentRow();
    }

    @Override
    protected void readDetails(Fields fields, TreatmentRow record) {
        fields.require("productName");
        record.productName = fields.text("productName", 200);
        record.diagnosis = fields.text("diagnosis", 200);
        record.dose = fields.text("dose", 200);
        record.route = fields.text("route", 100);
        record.batch = fields.text("batch", 100);
        record.prescriber = fields.text("prescriber", 200);
        record.endedOn = fields.date("endedOn");
        record.milkWithheldUntil = fields.date("milkWithheldUntil");
        record.meatWithheldUntil = fields.date("meatWithheldUntil");
        record.note = fields.text("note", 4000);
        // sent back with an answer's record; it is ours and not kept
        fields.has("caution");
    }

    @Override
    protected void writeDetails(TreatmentRow record, ObjectNode content) {
        put(content, "productName", record.productName);
        put(content, "diagnosis", record.diagnosis);
        put(content, "dose", record.dose);
        put(content, "route", record.route);
        put(content, "batch", record.batch);
        put(content, "prescriber", record.prescriber);
        put(content, "endedOn", record.endedOn);
        put(content, "milkWithheldUntil", record.milkWithheldUntil);
        put(content, "meatWithheldUntil", record.meatWithheldUntil);
        put(content, "note", record.note);
    }

    /** Nobody reads a withholding day of ours without the caution, a tool that follows the changes included. */
    @Override
    protected void addNotes(ObjectNode wire) {
        wire.put("caution", TreatmentBody.CAUTION);
    }

    @Override
    protected void checkDetails(Posted<TreatmentRow> posted, TreatmentRow replaced, Surroundings surroundings) {
        TreatmentRow record = posted.record();
        checkPresent(posted, surroundings);
        posted.add(FindingView.info("withholding-as-entered", posted.pointer(), TreatmentBody.CAUTION));
        if (record.endedOn != null && record.endedOn.isBefore(record.date)) {
            posted.add(FindingView.error(
                            "end-before-start", posted.pointer("endedOn"), "lies before the first day of treatment")
                    .seen(record.endedOn.toString())
                    .expecting("at least " + record.date));
        }
        checkWithholding(posted, "milkWithheldUntil", record.milkWithheldUntil);
        checkWithholding(posted, "meatWithheldUntil", record.meatWithheldUntil);
    }

    private void checkWithholding(Posted<TreatmentRow> posted, String member, LocalDate until) {
        TreatmentRow record = posted.record();
        LocalDate last = record.endedOn == null ? record.date : record.endedOn;
        if (until == null) {
            posted.add(FindingView.warning(
                    "withholding-missing",
                    posted.pointer(member),
                    "is not entered: treat it as withheld, and ask your veterinarian until when"));
        } else if (until.isBefore(last)) {
            posted.add(FindingView.warning(
                            "withholding-before-treatment",
                            posted.pointer(member),
                            "lies before the end of the treatment; ask your veterinarian")
                    .seen(until.toString())
                    .expecting("at least " + last));
        }
    }
}
