package org.pailbook.records.health;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.ForemilkCheckRow;
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

    private static final List<Member<ForemilkCheckRow>> MEMBERS = Members.of(ForemilkCheckRow.class)
            .code(
                    "milkingOfDay",
                    MILKING_OF_DAY_CODES,
                    record -> record.milkingOfDay,
                    (record, value) -> record.milkingOfDay = value)
            .needed()
            .code("quarter", QUARTER_CODES, record -> record.quarter, (record, value) -> record.quarter = value)
            .needed()
            .code("finding", FINDING_CODES, record -> record.finding, (record, value) -> record.finding = value)
            .needed()
            .code("udder", UDDER_CODES, record -> record.udder, (record, value) -> record.udder = value)
            .flag("cowIll", record -> record.cowIll, (record, value) -> record.cowIll = value)
            .code("action", ACTION_CODES, record -> record.action, (record, value) -> record.action = value)
            .text("checkedBy", 100, record -> record.checkedBy, (record, value) -> record.checkedBy = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

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
    protected List<Member<ForemilkCheckRow>> members() {
        return MEMBERS;
    }

    @Override
    protected ForemilkCheckRow newRecord() {
        return new ForemilkCheckRow();
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
