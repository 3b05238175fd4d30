package org.pailbook.records.testday;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How test days are read, checked and shown. */
@Singleton
public final class TestDayKind extends EventKind<TestDayRow> {
    @Override
    public String name() {
        return "test-days";
    }

    @Override
    public Class<TestDayRow> entity() {
        return TestDayRow.class;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.number("milk_kg", "milkKg"),
                Column.number("fat_pct", "fatPct"),
                Column.number("protein_pct", "proteinPct"),
                Column.number("lactose_pct", "lactosePct"),
                Column.number("scc_thousand_per_ml", "sccThousandPerMl"));
    }

    @Override
    protected TestDayRow newRecord() {
        return new TestDayRow();
    }

    @Override
    protected void readDetails(Fields fields, TestDayRow record) {
        record.milkKg = fields.number("milkKg");
        record.fatPct = fields.number("fatPct");
        record.proteinPct = fields.number("proteinPct");
        record.lactosePct = fields.number("lactosePct");
        record.sccThousandPerMl = fields.number("sccThousandPerMl");
    }

    @Override
    protected void writeDetails(TestDayRow record, ObjectNode content) {
        put(content, "milkKg", record.milkKg);
        put(content, "fatPct", record.fatPct);
        put(content, "proteinPct", record.proteinPct);
        put(content, "lactosePct", record.lactosePct);
        put(content, "sccThousandPerMl", record.sccThousandPerMl);
    }

    @Override
    protected void checkDetails(Posted<TestDayRow> posted, TestDayRow replaced, Surroundings surroundings) {
        TestDayRow record = posted.record();
        if (record.milkKg == null
                && record.fatPct == null
                && record.proteinPct == null
                && record.lactosePct == null
                && record.sccThousandPerMl == null) {
            posted.add(FindingView.error(
                    "nothing-measured",
                    posted.pointer(),
                    "has no measured value; leave the row out if she was not tested"));
        }
        TestDayLimits.check(posted);
        checkStage(posted, surroundings);
    }

    private static void checkStage(Posted<TestDayRow> posted, Surroundings surroundings) {
        TestDayRow record = posted.record();
        surroundings
                .departureBefore(record.animalId, record.date)
                .ifPresent(left -> posted.add(FindingView.error(
                                "after-departure", posted.pointer("date"), "lies after the animal left the herd")
                        .seen(record.date.toString())
                        .expecting("at most " + left)));
        Optional<LocalDate> calved = surroundings.calvingOnOrBefore(record.animalId, record.date);
        if (calved.isEmpty()) {
            posted.add(
                    FindingView.warning(
                            "no-calving-before",
                            posted.pointer("date"),
                            "no calving on or before this day is recorded; the test is kept and takes part in no lactation until one is"));
            return;
        }
        int daysInMilk = DaysInMilk.on(calved.get(), record.date);
        posted.inLactationDay(daysInMilk);
        if (daysInMilk < DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM) {
            posted.add(FindingView.warning(
                            "test-on-colostrum-days",
                            posted.pointer("date"),
                            "is shown but not used for yields: colostrum")
                    .seen("day " + daysInMilk + " after calving")
                    .expecting("day 5 or later"));
        }
    }

    private static void put(ObjectNode content, String member, Double value) {
        if (value != null) {
            content.put(member, value);
        }
    }
}
