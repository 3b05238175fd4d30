package org.pailbook.records.exchange;

import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.store.StoredRecord;

/** Is told what became of each row of a large body, in the order sent. */
public interface RowSink {
    <E extends StoredRecord> void add(RowOutcome<E> outcome);

    /** How many rows were told to have come to this. */
    int count(Outcome outcome);
}
