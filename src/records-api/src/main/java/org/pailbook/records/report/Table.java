package org.pailbook.records.report;

import java.io.IOException;
import java.util.List;

/** A form a report is written in: begin once, then each row, then end. */
interface Table {
    void begin(List<? extends Column<?>> columns) throws IOException;

    /** @param cells one for each column, null where nothing is known */
    void row(Object[] cells) throws IOException;

    void end() throws IOException;
}
