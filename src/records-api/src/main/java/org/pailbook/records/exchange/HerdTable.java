package org.pailbook.records.exchange;

import java.io.IOException;
import java.io.OutputStream;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** A table of a herd that can be written for a spreadsheet. Implementations are beans; whoever shows tables finds them by their name. */
public interface HerdTable {
    /** The name in the address: kebab-case, never changed. */
    String name();

    /**
     * Writes the table of that herd and day as CSV; the stream is flushed and left open.
     *
     * @param semicolon semicolons between cells and a comma in numbers
     */
    void writeCsv(HerdRow herd, AsOf asOf, boolean semicolon, OutputStream out) throws IOException;
}
