package org.pailbook.records.report;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.List;

/**
 * A report as CSV for a double click in a spreadsheet program: byte order mark, CRLF, quotes where RFC 4180 wants them.
 *
 * <p>Text a spreadsheet program would run as a formula gets an apostrophe before it, a number never does.
 *
 * @see "OWASP, CSV Injection: the characters = + - @ tab, carriage return and line feed"
 */
final class CsvTable implements Table {
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final String LINE_END = "\r\n";
    private static final String BEGINS_FORMULA = "=+-@\t\r\n";

    private final Writer out;
    private final boolean isDecimalComma;

    /** @param isDecimalComma semicolons between cells and a comma in numbers, as spreadsheet programs of many countries want it */
    CsvTable(Writer out, boolean isDecimalComma) {
        this.out = out;
        this.isDecimalComma = isDecimalComma;
    }

    @Override
    public void begin(List<? extends Column<?>> columns) throws IOException {
        out.write(BYTE_ORDER_MARK);
        for (int i = 0; i < columns.size(); i++) {
            separate(i);
            out.write(columns.get(i).name());
        }
        out.write(LINE_END);
    }

    @Override
    public void row(Object[] cells) throws IOException {
        for (int i = 0; i < cells.length; i++) {
            separate(i);
            if (cells[i] instanceof Number number) {
                out.write(number(number));
            } else if (cells[i] instanceof String text) {
                out.write(quoted(guarded(text)));
            } else if (cells[i] != null) {
                out.write(cells[i].toString());
            }
        }
        out.write(LINE_END);
    }

    @Override
    public void end() throws IOException {
        out.flush();
    }

    private void separate(int index) throws IOException {
        if (index > 0) {
            out.write(isDecimalComma ? ';' : ',');
        }
    }

    private String number(Number number) {
        String plain = number instanceof BigDecimal decimal ? plain(decimal) : number.toString();
        return isDecimalComma ? plain.replace('.', ',') : plain;
    }

    private static String plain(BigDecimal decimal) {
        return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
    }

    private static String guarded(String text) {
        return BEGINS_FORMULA.indexOf(text.charAt(0)) < 0 ? text : "'" + text;
    }

    private static String quoted(String text) {
        boolean isPlain = text.chars().noneMatch(sign -> ",;\"\r\n".indexOf(sign) >= 0);
        return isPlain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
