package org.pailbook.records.intake;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Locale;

/** What became of a posted row. */
public enum Outcome {
    CREATED,
    UPDATED,
    /** The same content was already there; nothing was written. */
    UNCHANGED,
    /** A later row of the same request has the same key and was taken instead. */
    SUPERSEDED,
    /** Not stored, because of an error finding. */
    REFUSED,
    /** Taken out of force, its history kept; never the outcome of a posted row. */
    WITHDRAWN;

    /** What may become of a posted row. */
    public static final List<Outcome> OF_ROWS = List.of(CREATED, UPDATED, UNCHANGED, SUPERSEDED, REFUSED);

    @JsonValue
    public String onWire() {
        return name().toLowerCase(Locale.ROOT);
    }
}
