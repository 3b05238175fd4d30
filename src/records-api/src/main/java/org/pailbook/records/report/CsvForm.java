package org.pailbook.records.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.pailbook.records.exchange.CsvTable;

/** A report as CSV for a double click in a spreadsheet program. */
final class CsvForm implements Table {
    private final OutputStream out;
    private final boolean semicolon;
    private CsvTable table;

    /** @param semicolon semicolons between cells and a comma in numbers, as spreadsheet programs of many countries want it */
    CsvForm(OutputStream out, boolean semicolon) {
        this.out = out;
        this.semicolon = semicolon;
    }

    @Override
    public void begin(List<? extends Column<?>> columns) throws IOException {
        table = new CsvTable(out, semicolon, columns.stream().map(Column::name).toList());
    }

    @Override
    public void row(Object[] cells) {
        for (Object cell : cells) {
            table.cell(cell);
        }
        table.endRow();
    }

    @Override
    public void end() throws IOException {
        table.end();
    }
}
