package org.pailbook.records.report;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/**
 * A report as a workbook: true dates and numbers, ear tags as text, one frozen header row, and a sheet that says what the columns are. No
 * formula and no macro is ever written.
 */
final class WorkbookTable implements Table {
    /** Of the file format, header row counted. */
    private static final int MOST_ROWS_A_SHEET = 1_048_576;

    private static final int ROWS_BETWEEN_FLUSHES = 500;
    private static final String DATE_FORMAT = "yyyy-mm-dd";
    private static final double COLUMN_WIDTH = 14;

    private final Workbook workbook;
    private final Report<?> report;
    private final HerdRow herd;
    private final AsOf asOf;
    private List<? extends Column<?>> columns;
    private Worksheet sheet;
    private int sheets;
    private int row;

    WorkbookTable(OutputStream out, Report<?> report, HerdRow herd, AsOf asOf) {
        this.workbook = new Workbook(out, "Pailbook", null);
        this.report = report;
        this.herd = herd;
        this.asOf = asOf;
    }

    @Override
    public void begin(List<? extends Column<?>> all) {
        columns = all;
        beginSheet();
    }

    private void beginSheet() {
        sheets++;
        sheet = workbook.newWorksheet(sheets == 1 ? report.name() : report.name() + " " + sheets);
        sheet.freezePane(0, 1);
        for (int i = 0; i < columns.size(); i++) {
            sheet.width(i, COLUMN_WIDTH);
            sheet.value(0, i, columns.get(i).name());
            sheet.style(0, i).bold().set();
        }
        row = 1;
    }

    @Override
    public void row(Object[] cells) throws IOException {
        if (row == MOST_ROWS_A_SHEET) {
            sheet.finish();
            beginSheet();
        }
        for (int i = 0; i < cells.length; i++) {
            write(i, cells[i]);
        }
        row++;
        if (row % ROWS_BETWEEN_FLUSHES == 0) {
            sheet.flush();
        }
    }

    private void write(int column, Object cell) {
        if (cell instanceof LocalDate date) {
            sheet.value(row, column, date);
            sheet.style(row, column).format(DATE_FORMAT).set();
        } else if (cell instanceof Number number) {
            sheet.value(row, column, number instanceof BigDecimal decimal ? decimal.doubleValue() : number);
        } else if (cell instanceof Boolean truth) {
            sheet.value(row, column, truth);
        } else if (cell != null) {
            sheet.inlineString(row, column, cell.toString());
        }
    }

    @Override
    public void end() throws IOException {
        sheet.finish();
        Worksheet about = workbook.newWorksheet("About");
        pair(about, 0, "herd", herd.name + " (" + herd.code + ")");
        pair(about, 1, "report", report.name());
        pair(about, 2, "one row is", report.meaning());
        pair(about, 3, "as of", asOf.day().toString());
        pair(about, 4, "known at", asOf.knownAtText());
        pair(about, 5, "computed at", asOf.computedAt().toString());
        pair(about, 6, "methods", "named in the column method; /v1/methods lists their sources");
        int line = 8;
        about.value(line, 0, "column");
        about.value(line, 1, "unit");
        about.value(line, 2, "meaning");
        about.range(line, 0, line, 2).style().bold().set();
        for (Column<?> column : columns) {
            line++;
            about.value(line, 0, column.name());
            about.value(line, 1, column.unit());
            about.value(line, 2, column.meaning());
        }
        about.width(0, 2 * COLUMN_WIDTH);
        about.width(2, 6 * COLUMN_WIDTH);
        about.finish();
        workbook.finish();
    }

    private static void pair(Worksheet about, int line, String name, String value) {
        about.value(line, 0, name);
        about.value(line, 1, value);
    }
}
