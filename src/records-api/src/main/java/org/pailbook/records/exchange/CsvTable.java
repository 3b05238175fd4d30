package org.pailbook.records.exchange;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A table for spreadsheets, written row by row: UTF-8 with a mark at its begin, RFC 4180 quoting, an empty cell for what is not known,
 * and no text that a spreadsheet would take for a formula.
 *
 * @see "OWASP, CSV Injection: cells that begin with = + - @ tab CR LF"
 */
public final class CsvTable {
    public static final String MEDIA_TYPE = "text/csv;charset=utf-8;header=present";
    private static final String STARTS_OF_FORMULAS = "=+-@\t\r\n";

    private final CSVPrinter printer;
    private final BufferedWriter text;
    private final boolean semicolon;
    private final List<String> row = new ArrayList<>();

    /**
     * Begins a table with its header.
     *
     * @param semicolon semicolons between cells and a comma in numbers, for where the comma is the decimal mark
     * @param columns their headings; any text
     */
    public CsvTable(OutputStream out, boolean semicolon, List<String> columns) throws IOException {
        this.semicolon = semicolon;
        this.text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        text.write('\uFEFF');
        this.printer = new CSVPrinter(
                text,
                CSVFormat.RFC4180.builder().setDelimiter(semicolon ? ';' : ',').get());
        printer.printRecord(columns.stream().map(CsvTable::marked).toList());
    }

    /** A cell: text, a number, a date or a truth as it is; null for what is not known. */
    public CsvTable cell(Object value) {
        if (value instanceof String text) {
            row.add(marked(text));
        } else if (value instanceof BigDecimal number) {
            row.add(plain(number));
        } else if (value instanceof Double number) {
            row.add(plain(BigDecimal.valueOf(number)));
        } else {
            row.add(value == null ? null : value.toString());
        }
        return this;
    }

    /** A text cell with the mark against being taken for a formula, where it needs one. */
    public static String marked(String text) {
        return isFormula(text) ? "'" + text : text;
    }

    /** Text that a spreadsheet would take for a formula, or that already wears the mark against it. */
    private static boolean isFormula(String value) {
        String bare = value.replaceFirst("^'+", "");
        return !bare.isEmpty() && STARTS_OF_FORMULAS.indexOf(bare.charAt(0)) >= 0;
    }

    /** A text cell without the mark this table puts before what looks like a formula. */
    public static String withoutMark(String cell) {
        return cell.startsWith("'") && isFormula(cell) ? cell.substring(1) : cell;
    }

    public void endRow() {
        try {
            printer.printRecord(row);
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
        row.clear();
    }

    /** Sends what is still waiting to be written. */
    public void end() throws IOException {
        text.flush();
    }

    private String plain(BigDecimal number) {
        BigDecimal shortest = number.stripTrailingZeros();
        String digits = (shortest.scale() < 0 ? shortest.setScale(0) : shortest).toPlainString();
        return semicolon ? digits.replace('.', ',') : digits;
    }
}
