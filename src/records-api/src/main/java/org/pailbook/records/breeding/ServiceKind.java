package org.pailbook.records.breeding;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.wire.Fields;

/** How services are read, checked and shown. */
@Singleton
public final class ServiceKind extends EventKind<ServiceRow> {
    private static final List<String> METHOD_CODES =
            List.of("naturalService", "runWithBull", "insemination", "implantation");

    @Override
    public String name() {
        return "services";
    }

    @Override
    public Class<ServiceRow> entity() {
        return ServiceRow.class;
    }

    @Override
    protected Object keyBesides(ServiceRow record) {
        return record.serviceOfDay;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.number("service_of_day", "serviceOfDay"),
                Column.text("method", "method"),
                Column.text("sire", "sire"),
                Column.text("note", "note"));
    }

    @Override
    protected ServiceRow newRecord() {
        return new ServiceRow();
    }

    @Override
    protected void readDetails(Fields fields, ServiceRow record) {
        record.serviceOfDay = fields.integer("serviceOfDay", 1, 9);
        if (!fields.has("serviceOfDay")) {
            record.serviceOfDay = 1;
        }
        record.method = fields.code("method", METHOD_CODES);
        record.sire = fields.text("sire", 100);
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(ServiceRow record, ObjectNode content) {
        put(content, "serviceOfDay", record.serviceOfDay);
        put(content, "method", record.method);
        put(content, "sire", record.sire);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(Posted<ServiceRow> posted, ServiceRow replaced, Surroundings surroundings) {
        ServiceRow record = posted.record();
        checkPresent(posted, surroundings);
        surroundings.calvingOnOrBefore(record.animalId, record.date).ifPresent(calved -> {
            int daysInMilk = DaysInMilk.on(calved, record.date);
            posted.inLactationDay(daysInMilk);
            ValueChecks.warn(
                    posted, "service.daysInMilk", dayMember(), daysInMilk, "lies unusually early after calving");
        });
    }
}
