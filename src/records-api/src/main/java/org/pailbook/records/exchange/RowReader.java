package org.pailbook.records.exchange;

import java.io.IOException;
import org.pailbook.records.intake.PostedRow;

/** Rows of a body, one after the other. */
interface RowReader {
    /**
     * The next row, or null at the end. A row that is wrong in itself comes as an unreadable row; only a body that cannot
     * be read any further throws.
     */
    PostedRow next() throws IOException;
}
