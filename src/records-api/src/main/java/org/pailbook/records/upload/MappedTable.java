package org.pailbook.records.upload;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.pailbook.records.exchange.CsvTable;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.intake.Column;

/**
 * A file's rows as the table the API takes: our columns, decimal points, kg, days with the year first. What cannot be brought over as it was said to be
 * is left as it stands, so that the checks of the record name it; a row with another number of cells than the heading is told apart and left out.
 */
final class MappedTable extends InputStream {
    /** A row that is no row of the table. */
    record Ragged(int line, int cells, int expected) {}

    private static final String ROW_END = "\r\n";

    private final TextTable table;
    private final FileMapping mapping;
    private final List<Column> columns;
    private final ZoneId zone;
    private final int width;
    private final Consumer<Ragged> ragged;
    private final List<Integer> lines = new ArrayList<>();
    private byte[] ready;
    private int at;
    private boolean isEnded;
    private FileFault.Unreadable fault;

    /**
     * @param table its heading read already
     * @param columns of the kind
     * @param ragged told of each row with another number of cells
     */
    MappedTable(TextTable table, FileMapping mapping, List<Column> columns, ZoneId zone, Consumer<Ragged> ragged) {
        this.table = table;
        this.mapping = mapping;
        this.columns = columns.stream()
                .filter(column -> mapping.placeOf(column.name()) >= 0
                        || !constant(column, mapping).isEmpty())
                .toList();
        this.zone = zone;
        this.width = mapping.columns().size();
        this.ragged = ragged;
        this.ready = bytes(this.columns.stream().map(Column::name).toList());
    }

    /** Line of the file that the row of that number, from 1, came from. */
    int lineOf(int row) {
        return lines.get(row - 1);
    }

    /** What ended the table before its end; null if nothing did. */
    FileFault.Unreadable fault() {
        return fault;
    }

    /** The columns of ours that are filled. */
    List<Column> columns() {
        return columns;
    }

    /** A row's cells in our columns. */
    List<String> converted(List<String> cells) {
        return columns.stream().map(column -> converted(column, cells)).toList();
    }

    private String converted(Column column, List<String> cells) {
        int place = mapping.placeOf(column.name());
        if (place < 0) {
            return constant(column, mapping);
        }
        String cell = cells.get(place);
        if (cell.isEmpty()) {
            return cell;
        }
        if (isInstant(column.name())) {
            return mapping.dates()
                    .orElse(FileDates.YEAR_FIRST)
                    .instant(cell, zone)
                    .orElse(cell);
        }
        if (isDay(column.name())) {
            return mapping.dates().orElse(FileDates.YEAR_FIRST).day(cell).orElse(cell);
        }
        return column.type() == Column.Type.NUMBER ? number(column.name(), cell) : cell;
    }

    private String number(String column, String cell) {
        boolean comma = mapping.decimalComma().orElse(false);
        if (!cell.matches(comma ? "[+-]?[0-9]{1,20}(,[0-9]{1,20})?" : "[+-]?[0-9]{1,20}(\\.[0-9]{1,20})?")) {
            return cell;
        }
        BigDecimal number = new BigDecimal(cell.replace(',', '.'));
        return Optional.ofNullable(mapping.units().get(column))
                .map(unit -> unit.converted(number))
                .orElse(number)
                .toPlainString();
    }

    private static String constant(Column column, FileMapping mapping) {
        return switch (column.name()) {
            case "animal_scheme" -> mapping.scheme();
            case "source" -> mapping.source();
            default -> "";
        };
    }

    static boolean isInstant(String column) {
        return column.endsWith("_at");
    }

    static boolean isDay(String column) {
        return column.equals("date")
                || column.endsWith("_date")
                || column.endsWith("_on")
                || column.endsWith("_from")
                || column.endsWith("_until");
    }

    static boolean hasUnit(String column) {
        return !FileUnit.ofColumn(column).isEmpty();
    }

    private boolean fill() {
        while (!isEnded && at == ready.length) {
            TextTable.Row row;
            try {
                row = table.next();
            } catch (FileFault.Unreadable broken) {
                fault = broken;
                row = null;
            }
            if (row == null) {
                isEnded = true;
            } else if (row.cells().size() != width) {
                ragged.accept(new Ragged(row.line(), row.cells().size(), width));
            } else {
                lines.add(row.line());
                ready = bytes(marked(converted(row.cells())));
                at = 0;
            }
        }
        return at < ready.length;
    }

    /** The reader of the table takes one mark off each text, and the file's own was taken off before. */
    private List<String> marked(List<String> cells) {
        List<String> marked = new ArrayList<>(cells);
        for (int i = 0; i < marked.size(); i++) {
            if (columns.get(i).type() == Column.Type.TEXT) {
                marked.set(i, CsvTable.marked(marked.get(i)));
            }
        }
        return marked;
    }

    private static byte[] bytes(List<String> cells) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Writer text = new OutputStreamWriter(bytes, StandardCharsets.UTF_8);
                CSVPrinter printer = new CSVPrinter(
                        text,
                        CSVFormat.RFC4180.builder().setRecordSeparator(ROW_END).get())) {
            printer.printRecord(cells);
        } catch (IOException never) {
            throw new IllegalStateException("memory does not fail", never);
        }
        return bytes.toByteArray();
    }

    @Override
    public int read() {
        return fill() ? ready[at++] & 0xff : -1;
    }

    @Override
    public int read(byte[] into, int from, int most) {
        if (most == 0) {
            return 0;
        }
        if (!fill()) {
            return -1;
        }
        int count = Math.min(most, ready.length - at);
        System.arraycopy(ready, at, into, from, count);
        at += count;
        return count;
    }
}
