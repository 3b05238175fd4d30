package org.pailbook.records.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.DayExpectation;
import org.pailbook.records.entry.EntryChoice;
import org.pailbook.records.entry.Sheet;
import org.pailbook.records.entry.SheetCell;
import org.pailbook.records.entry.SheetOrder;
import org.pailbook.records.entry.SheetRow;

/**
 * The sheet of a weigh day.
 *
 * @param mayWrite whether this key may save anything
 * @param choices orders to choose from
 * @param cows how many are in milk
 * @param number of the part of the list, from 1
 * @param parts how many there are
 * @param saved how many rows were just saved by the plain form; 0 for none
 * @param notSaved how many fields were not
 */
record WeighDayPage(
        Shown shown,
        boolean mayWrite,
        List<Choice> choices,
        List<Choice> milkings,
        boolean samples,
        int cows,
        int number,
        int parts,
        List<Row> rows,
        int saved,
        int notSaved) {
    /** One of several to choose. */
    record Choice(String value, String word, boolean isChosen) {}

    /**
     * One cow.
     *
     * @param expected both ends in words; empty text if nothing can be said
     * @param low the lower end as a plain number; empty text without one
     */
    record Row(
            String animalId,
            String link,
            String id,
            String name,
            String expected,
            String low,
            String high,
            List<Field> fields,
            String note) {}

    /**
     * One field.
     *
     * @param typed what stands in it
     * @param seen what is recorded, in the unit of the record with all digits
     * @param message what is wrong or to be looked at; empty text for nothing
     */
    record Field(
            String cell,
            String name,
            String seenName,
            String label,
            String typed,
            String seen,
            String most,
            boolean isMilk,
            boolean isWrong,
            String message) {}

    public boolean hasBefore() {
        return number > 1;
    }

    public boolean hasAfter() {
        return number < parts;
    }

    public String before() {
        return shown.numbered("/weigh-day", number - 1);
    }

    public String after() {
        return shown.numbered("/weigh-day", number + 1);
    }

    /** @param told what became of fields just typed, by our id of the cow; empty if none were */
    static WeighDayPage of(
            Shown shown,
            boolean mayWrite,
            EntryChoice choice,
            Sheet sheet,
            Map<String, Map<SheetCell, SheetEntry.Told>> told,
            int saved) {
        SheetUnits units = new SheetUnits(shown.unit());
        return new WeighDayPage(
                shown,
                mayWrite,
                Stream.of(SheetOrder.values())
                        .map(order -> new Choice(
                                order.wireName(),
                                PageWords.word("sheet.order." + order.wireName()),
                                order == choice.order()))
                        .toList(),
                Stream.of(2, 3, 1)
                        .map(count -> new Choice(
                                Integer.toString(count),
                                PageWords.word("sheet.milkings." + count),
                                count == choice.milkings()))
                        .toList(),
                choice.samples(),
                sheet.cows(),
                sheet.part(),
                sheet.parts(),
                sheet.rows().stream()
                        .map(row -> row(row, choice, units, shown, told.getOrDefault(row.animalId(), Map.of())))
                        .toList(),
                saved,
                (int) told.values().stream()
                        .flatMap(cells -> cells.values().stream())
                        .filter(cell -> !cell.isSaved())
                        .count());
    }

    private static Row row(
            SheetRow row, EntryChoice choice, SheetUnits units, Shown shown, Map<SheetCell, SheetEntry.Told> told) {
        Optional<Interval> ends = row.expected().map(DayExpectation::interval95);
        List<Field> fields = new ArrayList<>();
        for (SheetCell cell : choice.cells()) {
            fields.add(field(row, cell, units, Optional.ofNullable(told.get(cell))));
        }
        return new Row(
                row.animalId(),
                shown.cow(row.identifier()),
                row.identifier().id(),
                row.name(),
                ends.map(both -> PageWords.with(
                                "sheet.expected",
                                Shown.number(Math.max(0, shown.unit().of(both.low())), 0),
                                Shown.number(shown.unit().of(both.high()), 0) + "\u00a0" + shown.unitName()))
                        .orElse(""),
                ends.map(both -> units.end(both.low())).orElse(""),
                ends.map(both -> units.end(both.high())).orElse(""),
                fields,
                note(row, choice, ends));
    }

    private static Field field(SheetRow row, SheetCell cell, SheetUnits units, Optional<SheetEntry.Told> told) {
        Optional<Double> kept = Optional.ofNullable(row.values().get(cell));
        String typed = told.map(SheetEntry.Told::text)
                .orElseGet(() -> kept.map(value -> units.shown(cell, value)).orElse(""));
        String seen = told.map(SheetEntry.Told::there)
                .orElseGet(() -> kept.map(TypedNumber::whole).orElse(""));
        return new Field(
                cell.wireName(),
                SheetUnits.name(cell, row.animalId()),
                SheetUnits.seenName(cell, row.animalId()),
                units.label(cell),
                typed,
                seen,
                units.most(cell),
                cell.isMilk(),
                told.filter(one -> !one.isSaved()).isPresent(),
                told.map(SheetEntry.Told::message).orElse(""));
    }

    /** What is recorded that the fields do not show, or that lies outside what was expected. */
    private static String note(SheetRow row, EntryChoice choice, Optional<Interval> ends) {
        Double whole = row.values().get(SheetCell.DAY);
        List<SheetCell> milk = SheetCell.ofMilk(choice.milkings());
        if (whole != null && !milk.contains(SheetCell.DAY)) {
            return PageWords.with("sheet.whole", TypedNumber.whole(whole));
        }
        boolean isWhole = milk.stream().allMatch(row.values()::containsKey);
        double sum = milk.stream()
                .mapToDouble(cell -> row.values().getOrDefault(cell, 0.0))
                .sum();
        boolean isOdd = ends.isPresent()
                && (sum > ends.get().high() || (isWhole && sum < ends.get().low()));
        return isOdd ? PageWords.word("sheet.odd") : "";
    }
}
