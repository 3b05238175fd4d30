package org.pailbook.records.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/**
 * One report of one herd on one day, on its way into a table: its own columns, and after them the four that say when and how.
 *
 * @param <R> what one row is made from
 */
record ReportRun<R>(Report<R> report, HerdRow herd, AsOf asOf) {
    /** The columns as they stand in the table. */
    static <R> List<Column<R>> columns(Report<R> report, LocalDate day) {
        List<Column<R>> all = new ArrayList<>(report.columns());
        all.add(Column.date("as_of", "Events after this day took no part", row -> Optional.of(day)));
        all.add(Column.text(
                "method",
                "How the figures were made; /v1/methods has the source",
                row -> method(report, row, PublishedMethod::id)));
        all.add(Column.text(
                "method_version",
                "Rises when the method's figures change",
                row -> method(report, row, method -> Integer.toString(method.version()))));
        all.add(Column.text(
                "warnings",
                "Codes of what was found about the figures, parted by blanks",
                row -> report.findings(row).stream()
                        .map(finding -> finding.code().code())
                        .distinct()
                        .collect(Collectors.joining(" "))));
        return all;
    }

    private static <R> String method(Report<R> report, R row, Function<PublishedMethod, String> part) {
        PublishedMethod method = report.method(row);
        return method == null ? null : part.apply(method);
    }

    void writeTo(Table table) throws IOException {
        List<Column<R>> columns = columns(report, asOf.day());
        table.begin(columns);
        try {
            report.rows(herd, asOf, row -> cells(columns, row), cells -> write(table, cells));
        } catch (UncheckedIOException readerGone) {
            throw readerGone.getCause();
        }
        table.end();
    }

    private static <R> Object[] cells(List<Column<R>> columns, R row) {
        Object[] cells = new Object[columns.size()];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = columns.get(i).value().apply(row);
        }
        return cells;
    }

    private static void write(Table table, Object[] cells) {
        try {
            table.row(cells);
        } catch (IOException readerGone) {
            throw new UncheckedIOException(readerGone);
        }
    }
}
