package org.pailbook.records.breeding;

import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.wire.FindingView;

/** How pregnancy checks are read, checked and shown. */
@Singleton
public final class PregnancyCheckKind extends EventKind<PregnancyCheckRow> {
    private static final List<String> RESULT_CODES = List.of("empty", "pregnant", "multiple", "unknown");
    private static final List<String> METHOD_CODES =
            List.of("echography", "palpation", "blood", "milk", "visual", "other");

    private static final List<Member<PregnancyCheckRow>> MEMBERS = Members.of(PregnancyCheckRow.class)
            .code("result", RESULT_CODES, record -> record.result, (record, value) -> record.result = value)
            .needed()
            .code("method", METHOD_CODES, record -> record.method, (record, value) -> record.method = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

    @Override
    public String name() {
        return "pregnancy-checks";
    }

    @Override
    public Class<PregnancyCheckRow> entity() {
        return PregnancyCheckRow.class;
    }

    @Override
    protected List<Member<PregnancyCheckRow>> members() {
        return MEMBERS;
    }

    @Override
    protected PregnancyCheckRow newRecord() {
        return new PregnancyCheckRow();
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
