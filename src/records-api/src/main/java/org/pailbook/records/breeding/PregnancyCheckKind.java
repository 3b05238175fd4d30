package org.pailbook.records.breeding;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How pregnancy checks are read, checked and shown. */
@Singleton
public final class PregnancyCheckKind extends EventKind<PregnancyCheckRow> {
    private static final List<String> RESULT_CODES = List.of("empty", "pregnant", "multiple", "unknown");
    private static final List<String> METHOD_CODES =
            List.of("echography", "palpation", "blood", "milk", "visual", "other");

    @Override
    public String name() {
        return "pregnancy-checks";
    }

    @Override
    public Class<PregnancyCheckRow> entity() {
        return PregnancyCheckRow.class;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(Column.text("result", "result"), Column.text("method", "method"), Column.text("note", "note"));
    }

    @Override
    protected PregnancyCheckRow newRecord() {
        return new PregnancyCheckRow();
    }

    @Override
    protected void readDetails(Fields fields, PregnancyCheckRow record) {
        fields.require("result");
        record.result = fields.code("result", RESULT_CODES);
        record.method = fields.code("method", METHOD_CODES);
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(PregnancyCheckRow record, ObjectNode content) {
        put(content, "result", record.result);
        put(content, "method", record.method);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(
            Posted<PregnancyCheckRow> posted, PregnancyCheckRow replaced, Surroundings surroundings) {
        PregnancyCheckRow record = posted.record();
        checkPresent(posted, surroundings);
        LocalDate served = surroundings
                .lastOnOrBefore(ServiceRow.class, record.animalId, record.date)
                .orElse(null);
        LocalDate calved =
                surroundings.calvingOnOrBefore(record.animalId, record.date).orElse(null);
        if (calved != null) {
            posted.inLactationDay(DaysInMilk.on(calved, record.date));
        }
        if (served == null || (calved != null && served.isBefore(calved))) {
            posted.add(FindingView.warning(
                    "check-before-service",
                    posted.pointer(dayMember()),
                    "no service since her last calving is recorded on or before this day"));
            return;
        }
        ValueChecks.warn(
                posted,
                "pregnancyCheck.daysAfterService",
                dayMember(),
                DaysInMilk.on(served, record.date),
                "lies nearer to the last service than a check can tell");
    }

    @Override
    protected Set<Class<? extends AnimalEvent>> looksAt() {
        return Set.of(ServiceRow.class);
    }
}
