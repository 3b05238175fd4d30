package org.pailbook.records.entry;

import java.util.List;

/**
 * The cows in milk on a day, in the chosen order, some of them with all that is on the sheet.
 *
 * @param cows how many are in milk
 * @param part number of the part shown, from 1
 * @param parts 1 at least
 * @param rows those of the part
 */
public record Sheet(int cows, int part, int parts, List<SheetRow> rows) {
    /** Rows a telephone bears at once, and what is left to type while there is no connection. Ours. */
    public static final int ROWS = 250;
}
