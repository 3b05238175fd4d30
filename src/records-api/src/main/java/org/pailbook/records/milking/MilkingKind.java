package org.pailbook.records.milking;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.wire.FindingView;

/** How milkings are read, checked and shown. */
@Singleton
public final class MilkingKind extends EventKind<MilkingRow> {
    private static final List<String> MILKING_OF_DAY_CODES = List.of("am", "pm", "third");

    private static final List<Member<MilkingRow>> MEMBERS = Members.of(MilkingRow.class)
            .code(
                    "milkingOfDay",
                    MILKING_OF_DAY_CODES,
                    record -> record.milkingOfDay,
                    (record, value) -> record.milkingOfDay = value)
            .needed()
            .number("milkKg", record -> record.milkKg, (record, value) -> record.milkKg = value)
            .needed()
            .within("milking.milkKg")
            .integer(
                    "milkingsPerDay",
                    1,
                    3,
                    record -> record.milkingsPerDay,
                    (record, value) -> record.milkingsPerDay = value)
            .number(
                    "hoursSincePrevious",
                    record -> record.hoursSincePrevious,
                    (record, value) -> record.hoursSincePrevious = value)
            .within("milking.hoursSincePrevious")
            .number(
                    "durationMinutes",
                    record -> record.durationMinutes,
                    (record, value) -> record.durationMinutes = value)
            .within("milking.durationMinutes")
            .number("fatPct", record -> record.fatPct, (record, value) -> record.fatPct = value)
            .within("fatPct")
            .number("proteinPct", record -> record.proteinPct, (record, value) -> record.proteinPct = value)
            .within("proteinPct")
            .number("lactosePct", record -> record.lactosePct, (record, value) -> record.lactosePct = value)
            .within("lactosePct")
            .number(
                    "sccThousandPerMl",
                    record -> record.sccThousandPerMl,
                    (record, value) -> record.sccThousandPerMl = value)
            .within("sccThousandPerMl")
            .list();

    @Override
    public String name() {
        return "milkings";
    }

    @Override
    public Class<MilkingRow> entity() {
        return MilkingRow.class;
    }

    @Override
    protected String dayMember() {
        return "startedAt";
    }

    @Override
    public String dayColumn() {
        return "started_at";
    }

    @Override
    protected List<Member<MilkingRow>> members() {
        return MEMBERS;
    }

    @Override
    protected MilkingRow newRecord() {
        return new MilkingRow();
    }

    @Override
    protected void checkDetails(Posted<MilkingRow> posted, MilkingRow replaced, Surroundings surroundings) {
        MilkingRow record = posted.record();
        checkPresent(posted, surroundings);
        checkLimits(posted);
        boolean tooMany = record.milkingsPerDay != null
                && record.milkingsPerDay
                        < ("third".equals(record.milkingOfDay) ? 3 : "pm".equals(record.milkingOfDay) ? 2 : 1);
        if (tooMany) {
            posted.add(FindingView.error(
                            "milkings-contradict",
                            posted.pointer("milkingsPerDay"),
                            "is less than which milking of the day this is said to be")
                    .seen(record.milkingsPerDay.toString()));
        }
        noteLactationDay(posted, surroundings, "it takes part in no lactation until one is");
    }
}
