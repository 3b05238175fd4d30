package org.pailbook.records.health;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.TreatmentRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How treatments are read, checked and shown. */
@Singleton
public final class TreatmentKind extends EventKind<TreatmentRow> {
    private static final List<Member<TreatmentRow>> MEMBERS = Members.of(TreatmentRow.class)
            .text("productName", 200, record -> record.productName, (record, value) -> record.productName = value)
            .needed()
            .text("diagnosis", 200, record -> record.diagnosis, (record, value) -> record.diagnosis = value)
            .text("dose", 200, record -> record.dose, (record, value) -> record.dose = value)
            .text("route", 100, record -> record.route, (record, value) -> record.route = value)
            .text("batch", 100, record -> record.batch, (record, value) -> record.batch = value)
            .text("prescriber", 200, record -> record.prescriber, (record, value) -> record.prescriber = value)
            .date("endedOn", record -> record.endedOn, (record, value) -> record.endedOn = value)
            .date(
                    "milkWithheldUntil",
                    record -> record.milkWithheldUntil,
                    (record, value) -> record.milkWithheldUntil = value)
            .date(
                    "meatWithheldUntil",
                    record -> record.meatWithheldUntil,
                    (record, value) -> record.meatWithheldUntil = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    public String dayColumn() {
        return "started_on";
    }

    @Override
    protected Object keyBesides(TreatmentRow record) {
        return record.productName;
    }

    @Override
    protected List<Member<TreatmentRow>> members() {
        return MEMBERS;
    }

    @Override
    protected TreatmentRow newRecord() {
        return new TreatmentRow();
    }

    @Override
    protected void readDetails(Fields fields, TreatmentRow record) {
        super.readDetails(fields, record);
        // sent back with an answer's record; it is ours and not kept
        fields.has("caution");
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

    @Override
    protected boolean isOfFemales() {
        return false;
    }
}
