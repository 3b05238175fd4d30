package org.pailbook.lactation.withheld;

import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.event.Quarter;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.sentence.Sentence;

/**
 * One reason why a cow's milk must stay out of the tank.
 *
 * @param kind what it is
 * @param quarter whose foremilk it was; empty for what concerns the whole udder
 * @param since from this moment
 * @param until as entered or set; empty if no end is known: then it goes on until somebody enters one
 * @param saidBy who recorded it; empty text if not recorded
 * @param said one sentence
 */
public record WithheldReason(
        Kind kind,
        Optional<Quarter> quarter,
        LocalDateTime since,
        Optional<WithholdingEnd> until,
        String saidBy,
        Sentence said) {

    /** What it is. */
    public enum Kind {
        /** A treatment, up to the end entered. */
        TREATMENT("treatment"),
        /** A treatment nobody entered an end for. */
        TREATMENT_END_NOT_ENTERED("treatmentEndNotEntered"),
        /** Foremilk that was not normal, until somebody clears it. */
        FOREMILK("foremilk"),
        /** The first days after calving, by the farm's setting. */
        COLOSTRUM("colostrum");

        private final String wireName;

        Kind(String wireName) {
            this.wireName = wireName;
        }

        public String wireName() {
            return wireName;
        }
    }

    public WithheldReason {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(quarter, "quarter");
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(until, "until");
        Objects.requireNonNull(saidBy, "saidBy");
        Objects.requireNonNull(said, "said");
    }

    /** In English. */
    public String words() {
        return said.text();
    }
}
