package org.pailbook.records.entry;

import java.util.ArrayList;
import java.util.List;
import org.pailbook.records.store.EntryChoiceRow;

/**
 * How the sheet of a weigh day is to look.
 *
 * @param milkings a day, 1 to 3; 1 is the milk of the whole day in one field
 * @param samples whether fat, protein and cells are on it
 * @param own ids of animals in the order somebody wrote down; may be empty
 */
public record EntryChoice(SheetOrder order, int milkings, boolean samples, List<String> own) {
    public static final EntryChoice USUAL = new EntryChoice(SheetOrder.TAG, 2, false, List.of());

    static EntryChoice of(EntryChoiceRow row) {
        return new EntryChoice(
                SheetOrder.of(row.sheetOrder).orElse(SheetOrder.TAG),
                row.milkings,
                row.samples,
                row.ownOrder == null ? List.of() : row.ownOrder.lines().toList());
    }

    /** The cells of each row, in the order in which they are typed. */
    public List<SheetCell> cells() {
        List<SheetCell> cells = new ArrayList<>(SheetCell.ofMilk(milkings));
        if (samples) {
            cells.addAll(SheetCell.ofSample());
        }
        return cells;
    }

    EntryChoiceRow row() {
        EntryChoiceRow row = new EntryChoiceRow();
        fill(row);
        row.ownOrder = own.isEmpty() ? null : String.join("\n", own);
        return row;
    }

    void fill(EntryChoiceRow row) {
        row.sheetOrder = order.wireName();
        row.milkings = milkings;
        row.samples = samples;
    }
}
