package org.pailbook.records.entry;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.pailbook.records.wire.FindingView;

/**
 * What became of a typed value.
 *
 * @param state whether it is kept
 * @param there what is kept now, in the unit of the record; empty if nothing is
 * @param since when that was written; only where somebody else wrote it
 * @param findings why it was refused, or what is to be looked at
 */
public record CellOutcome(State state, Optional<Double> there, Optional<Instant> since, List<FindingView> findings) {
    /** Whether it is kept. */
    public enum State {
        SAVED,
        REFUSED,
        /** Something else stands there than what the typist saw; nothing was overwritten. */
        CHANGED_MEANWHILE
    }

    static CellOutcome saved(Optional<Double> there, List<FindingView> findings) {
        return new CellOutcome(State.SAVED, there, Optional.empty(), findings);
    }

    static CellOutcome refused(Optional<Double> there, List<FindingView> findings) {
        return new CellOutcome(State.REFUSED, there, Optional.empty(), findings);
    }

    static CellOutcome changedMeanwhile(Optional<Double> there, Optional<Instant> since) {
        return new CellOutcome(State.CHANGED_MEANWHILE, there, since, List.of());
    }
}
