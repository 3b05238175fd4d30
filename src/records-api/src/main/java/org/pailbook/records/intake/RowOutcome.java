package org.pailbook.records.intake;

import java.util.List;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.FindingView;

/**
 * What became of one posted row.
 *
 * @param posted the row
 * @param outcome what became of it
 * @param record the record as it now stands; null if refused or superseded
 * @param daysInMilk of its day, where it lies in a lactation; else null
 * @param findings errors if it was refused, else warnings and notes
 */
public record RowOutcome<E extends StoredRecord>(
        PostedRow posted, Outcome outcome, E record, Integer daysInMilk, List<FindingView> findings) {

    static final String REVIVED = "revived";

    /** Whether it puts a withdrawn record in force again. */
    boolean isRevived() {
        return findings.stream().anyMatch(finding -> finding.code().equals(REVIVED));
    }

    static <E extends StoredRecord> RowOutcome<E> of(Posted<E> row, Outcome outcome, E record) {
        return new RowOutcome<>(row.row, outcome, record, row.daysInMilk(), row.findings());
    }
}
