package org.pailbook.records.breeding;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
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

    private static final List<Member<ServiceRow>> MEMBERS = Members.of(ServiceRow.class)
            .integer(
                    "serviceOfDay", 1, 9, record -> record.serviceOfDay, (record, value) -> record.serviceOfDay = value)
            .code("method", METHOD_CODES, record -> record.method, (record, value) -> record.method = value)
            .text("sire", 100, record -> record.sire, (record, value) -> record.sire = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    protected List<Member<ServiceRow>> members() {
        return MEMBERS;
    }

    @Override
    protected ServiceRow newRecord() {
        return new ServiceRow();
    }

    @Override
    protected void readDetails(Fields fields, ServiceRow record) {
        super.readDetails(fields, record);
        if (!fields.has("serviceOfDay")) {
            record.serviceOfDay = 1;
        }
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
