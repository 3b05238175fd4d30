package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pailbook.records.entry.CellOutcome;
import org.pailbook.records.entry.SheetCell;
import org.pailbook.records.entry.SheetWriting;
import org.pailbook.records.entry.TypedCell;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.FindingView;

/** Takes rows of a sheet as they were typed, stores them, and says in words what became of each field. */
@ApplicationScoped
public class SheetEntry {
    /**
     * What stood in a field.
     *
     * @param text as typed; empty text to take the value away
     * @param seen what stood there before, in the unit of the record and with all digits; empty text for nothing
     */
    record Typed(String text, String seen) {
        Optional<Double> seenValue() {
            return seen.isEmpty() ? Optional.empty() : TypedNumber.parse(seen);
        }
    }

    /**
     * What became of a field.
     *
     * @param text as typed
     * @param there what is recorded now, in the unit of the record and with all digits; empty text for nothing
     * @param message why it was not saved, or what is to be looked at; empty text without either
     */
    record Told(CellOutcome.State state, String text, String there, String message) {
        boolean isSaved() {
            return state == CellOutcome.State.SAVED;
        }
    }

    /** On which sheet it was typed, and by the holder of which key. */
    record On(HerdRow herd, LocalDate day, int milkings, SheetUnits units, String keyId) {}

    private final SheetWriting writing;

    @Inject
    SheetEntry(SheetWriting writing) {
        this.writing = writing;
    }

    /** Stores row by row; of every field typed, what became of it. */
    Map<String, Map<SheetCell, Told>> take(On sheet, Map<String, Map<SheetCell, Typed>> rows) {
        Map<String, Map<SheetCell, Told>> told = new LinkedHashMap<>();
        rows.forEach((animalId, cells) -> told.put(animalId, row(sheet, animalId, cells)));
        return told;
    }

    private Map<SheetCell, Told> row(On sheet, String animalId, Map<SheetCell, Typed> cells) {
        Map<SheetCell, Told> told = new EnumMap<>(SheetCell.class);
        Map<SheetCell, TypedCell> readable = new EnumMap<>(SheetCell.class);
        cells.forEach((cell, typed) -> {
            Optional<Double> value = typed.text().isEmpty()
                    ? Optional.empty()
                    : sheet.units().typed(cell, typed.text(), typed.seenValue());
            if (!RecordIds.isId(animalId) || (value.isEmpty() && !typed.text().isEmpty())) {
                told.put(
                        cell,
                        new Told(
                                CellOutcome.State.REFUSED,
                                typed.text(),
                                typed.seen(),
                                PageWords.word("sheet.notANumber")));
            } else {
                readable.put(cell, new TypedCell(value, typed.seenValue()));
            }
        });
        writing.write(sheet.herd(), sheet.day(), sheet.keyId(), animalId, sheet.milkings(), readable)
                .forEach((cell, outcome) ->
                        told.put(cell, told(sheet, cell, cells.get(cell).text(), outcome)));
        return told;
    }

    private static Told told(On sheet, SheetCell cell, String text, CellOutcome outcome) {
        String message = outcome.state() == CellOutcome.State.CHANGED_MEANWHILE
                ? changed(sheet, cell, outcome)
                : outcome.findings().stream().map(SheetEntry::words).collect(Collectors.joining("; "));
        return new Told(
                outcome.state(), text, outcome.there().map(TypedNumber::whole).orElse(""), message);
    }

    private static String changed(On sheet, SheetCell cell, CellOutcome outcome) {
        String there = outcome.there()
                .map(value -> sheet.units().shown(cell, value))
                .orElseGet(() -> PageWords.word("sheet.nothing"));
        return outcome.since().isEmpty()
                ? PageWords.word("sheet.changedNow")
                : PageWords.with(
                        "sheet.changed",
                        there,
                        clock(outcome.since().get(), sheet.herd().zone()));
    }

    private static String clock(java.time.Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalDateTime().withNano(0).toString().replace('T', ' ');
    }

    private static String words(FindingView finding) {
        return finding.expected() == null
                ? finding.message()
                : PageWords.with("sheet.finding", finding.message(), finding.expected());
    }
}
