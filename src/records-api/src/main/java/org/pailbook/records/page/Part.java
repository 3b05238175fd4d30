package org.pailbook.records.page;

import java.util.List;
import java.util.function.Function;

/**
 * Some rows of a long list.
 *
 * @param number of this part, from 1
 * @param parts how many there are, 1 at least
 * @param total rows of all parts
 */
record Part<T>(List<T> rows, int number, int parts, int total) {
    private static final int ROWS = 250;

    static <T> Part<T> of(List<T> all, int asked) {
        int parts = Math.max(1, (all.size() + ROWS - 1) / ROWS);
        int number = Math.min(asked, parts);
        return new Part<>(
                all.subList(Math.min(all.size(), (number - 1) * ROWS), Math.min(all.size(), number * ROWS)),
                number,
                parts,
                all.size());
    }

    /** The same rows shown otherwise. */
    <U> Part<U> as(Function<T, U> show) {
        return new Part<>(rows.stream().map(show).toList(), number, parts, total);
    }

    public boolean hasBefore() {
        return number > 1;
    }

    public boolean hasAfter() {
        return number < parts;
    }

    public int before() {
        return number - 1;
    }

    public int after() {
        return number + 1;
    }
}
