package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;

/**
 * A lactation put together from events, and what was noticed on the way.
 *
 * @param lactation with every test of its days, also those after its end
 * @param end how it ended
 * @param lastDate last day that belongs to it: the day before the next calving; empty if she has not calved again
 * @param findings about this lactation, in order of date as far as they have one
 */
public record AssembledLactation(Lactation lactation, End end, Optional<LocalDate> lastDate, List<Finding> findings) {

    /** How a lactation ended. */
    public enum End {
        /** She is in milk as far as is known. */
        IN_MILK,
        DRIED_OFF,
        LEFT,
        /** She calved again and the end of milking was not recorded. */
        NOT_RECORDED
    }

    public AssembledLactation {
        Objects.requireNonNull(lactation, "lactation");
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(lastDate, "lastDate");
        findings = List.copyOf(findings);
    }
}
