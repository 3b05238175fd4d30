package org.pailbook.records.computed;

import java.io.IOException;
import java.io.OutputStream;
import org.pailbook.records.wire.AsOf;

/**
 * Work on a whole herd that somebody waits for. After a start it is done a few times on an invented herd, so that the first who asks does not
 * wait until the machine has compiled it. Implementations are beans.
 */
public interface Rehearsed {
    /** Does the same as for a request and writes the answer, counted by no meter. */
    void rehearse(InventedHerd herd, AsOf asOf, OutputStream nowhere) throws IOException;
}
