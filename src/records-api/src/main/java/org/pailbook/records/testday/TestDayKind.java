package org.pailbook.records.testday;

import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.DryOffRow;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.FindingView;

/** How test days are read, checked and shown. */
@Singleton
public final class TestDayKind extends EventKind<TestDayRow> {
    private static final List<Member<TestDayRow>> MEMBERS = Members.of(TestDayRow.class)
            .number("milkKg", record -> record.milkKg, (record, value) -> record.milkKg = value)
            .number("fatPct", record -> record.fatPct, (record, value) -> record.fatPct = value)
            .number("proteinPct", record -> record.proteinPct, (record, value) -> record.proteinPct = value)
            .number("lactosePct", record -> record.lactosePct, (record, value) -> record.lactosePct = value)
            .number(
                    "sccThousandPerMl",
                    record -> record.sccThousandPerMl,
                    (record, value) -> record.sccThousandPerMl = value)
            .list();

    @Override
    public String name() {
        return "test-days";
    }

    @Override
    public Class<TestDayRow> entity() {
        return TestDayRow.class;
    }

    @Override
    protected List<Member<TestDayRow>> members() {
        return MEMBERS;
    }

    @Override
    protected TestDayRow newRecord() {
        return new TestDayRow();
    }

    @Override
    protected void checkDetails(Posted<TestDayRow> posted, TestDayRow replaced, Surroundings surroundings) {
        TestDayRow record = posted.record();
        if (MEMBERS.stream().allMatch(member -> member.value().apply(record) == null)) {
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
        // of several dry-offs of a lactation the last one counts
        LocalDate end = surroundings.calvingAfter(record.animalId, record.date).orElse(LocalDate.MAX);
        surroundings
                .lastOnOrBefore(DryOffRow.class, record.animalId, end)
                .filter(driedOff -> driedOff.isAfter(calved.get()) && driedOff.isBefore(record.date))
                .ifPresent(driedOff -> posted.add(FindingView.warning(
                                "test-after-dry-off",
                                posted.pointer("date"),
                                "lies after she was dried off; it is kept and takes part in no lactation, unless the dry-off is corrected")
                        .seen(record.date.toString())
                        .expecting("at most " + driedOff)));
    }

    @Override
    protected Set<Class<? extends AnimalEvent>> looksAt() {
        return Set.of(DryOffRow.class);
    }
}
