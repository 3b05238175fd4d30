package org.pailbook.records.milking;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How milkings are read, checked and shown. */
@Singleton
public final class MilkingKind extends EventKind<MilkingRow> {
    private static final List<String> MILKING_OF_DAY_CODES = List.of("am", "pm", "third");

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
    protected String dayColumn() {
        return "started_at";
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("milking_of_day", "milkingOfDay"),
                Column.number("milk_kg", "milkKg"),
                Column.number("milkings_per_day", "milkingsPerDay"),
                Column.number("hours_since_previous", "hoursSincePrevious"),
                Column.number("duration_minutes", "durationMinutes"),
                Column.number("fat_pct", "fatPct"),
                Column.number("protein_pct", "proteinPct"),
                Column.number("lactose_pct", "lactosePct"),
                Column.number("scc_thousand_per_ml", "sccThousandPerMl"));
    }

    @Override
    protected MilkingRow newRecord() {
        return new MilkingRow();
    }

    @Override
    protected void readDetails(Fields fields, MilkingRow record) {
        fields.require("milkingOfDay");
        record.milkingOfDay = fields.code("milkingOfDay", MILKING_OF_DAY_CODES);
        fields.require("milkKg");
        record.milkKg = fields.number("milkKg");
        record.milkingsPerDay = fields.integer("milkingsPerDay", 1, 3);
        record.hoursSincePrevious = fields.number("hoursSincePrevious");
        record.durationMinutes = fields.number("durationMinutes");
        record.fatPct = fields.number("fatPct");
        record.proteinPct = fields.number("proteinPct");
        record.lactosePct = fields.number("lactosePct");
        record.sccThousandPerMl = fields.number("sccThousandPerMl");
    }

    @Override
    protected void writeDetails(MilkingRow record, ObjectNode content) {
        put(content, "milkingOfDay", record.milkingOfDay);
        put(content, "milkKg", record.milkKg);
        put(content, "milkingsPerDay", record.milkingsPerDay);
        put(content, "hoursSincePrevious", record.hoursSincePrevious);
        put(content, "durationMinutes", record.durationMinutes);
        put(content, "fatPct", record.fatPct);
        put(content, "proteinPct", record.proteinPct);
        put(content, "lactosePct", record.lactosePct);
        put(content, "sccThousandPerMl", record.sccThousandPerMl);
    }

    @Override
    protected void checkDetails(Posted<MilkingRow> posted, MilkingRow replaced, Surroundings surroundings) {
        MilkingRow record = posted.record();
        checkPresent(posted, surroundings);
        ValueChecks.check(posted, "milking.milkKg", "milkKg", record.milkKg);
        ValueChecks.check(posted, "milking.hoursSincePrevious", "hoursSincePrevious", record.hoursSincePrevious);
        ValueChecks.check(posted, "milking.durationMinutes", "durationMinutes", record.durationMinutes);
        ValueChecks.check(posted, "fatPct", "fatPct", record.fatPct);
        ValueChecks.check(posted, "proteinPct", "proteinPct", record.proteinPct);
        ValueChecks.check(posted, "lactosePct", "lactosePct", record.lactosePct);
        ValueChecks.check(posted, "sccThousandPerMl", "sccThousandPerMl", record.sccThousandPerMl);
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
