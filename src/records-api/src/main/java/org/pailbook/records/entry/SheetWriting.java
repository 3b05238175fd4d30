package org.pailbook.records.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.store.TestDayRow;

/**
 * Stores what was typed of a cow on a day: each milking a milking, the rest a test day.
 *
 * <p>Sent again, it changes nothing. A value that somebody else put there since the typist looked is left, and told; the version of the record is
 * asked for when it is written, so nothing comes in between.
 */
@ApplicationScoped
public class SheetWriting {
    private final DayRecords days;
    private final CellWriting writing;
    private final RecordKind<MilkingRow> milkings;
    private final RecordKind<TestDayRow> tests;

    @Inject
    SheetWriting(DayRecords days, CellWriting writing, RecordKind<MilkingRow> milkings, RecordKind<TestDayRow> tests) {
        this.days = days;
        this.writing = writing;
        this.milkings = milkings;
        this.tests = tests;
    }

    /**
     * @param herd as it is now, not as the typist saw it
     * @param writtenBy id of the typist's key
     * @param milkingsADay how many there are on the sheet
     */
    public Map<SheetCell, CellOutcome> write(
            HerdRow herd,
            LocalDate day,
            String writtenBy,
            String animalId,
            int milkingsADay,
            Map<SheetCell, TypedCell> typed) {
        DayRecords.OfCow there = days.ofCow(herd, animalId, day);
        Map<SheetCell, CellOutcome> outcomes = new EnumMap<>(SheetCell.class);
        CellWriting.Place place = new CellWriting.Place(herd, writtenBy, animalId);
        Map<SheetCell, TypedCell> ofTest = new EnumMap<>(SheetCell.class);
        typed.forEach((cell, value) -> {
            if (cell.isMilking()) {
                Optional<MilkingRow> milking = there.milking(cell);
                String at = milking.map(one -> one.startedAt.toString())
                        .orElseGet(() -> day.atTime(cell.hour())
                                .atZone(herd.zone())
                                .toInstant()
                                .toString());
                CellWriting.Target<MilkingRow> target = new CellWriting.Target<>(
                        milkings,
                        milking,
                        Set.of(cell),
                        content -> content.put("startedAt", at)
                                .put("milkingOfDay", cell.wireName())
                                .put("milkingsPerDay", milkingsADay),
                        (row, any) -> row.milkKg,
                        row -> false);
                outcomes.putAll(writing.write(place, target, Map.of(cell, value)));
            } else {
                ofTest.put(cell, value);
            }
        });
        if (!ofTest.isEmpty()) {
            CellWriting.Target<TestDayRow> target = new CellWriting.Target<>(
                    tests,
                    there.test(),
                    SheetCell.OF_TEST_DAY,
                    content -> content.put("date", day.toString()),
                    (row, cell) -> cell.in(row),
                    row -> row.lactosePct != null);
            outcomes.putAll(writing.write(place, target, ofTest));
        }
        return outcomes;
    }
}
