package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What a version did to its record. */
public enum Action {
    CREATED,
    UPDATED,
    WITHDRAWN,
    /** In force again after it was withdrawn. */
    REVIVED;

    /** What version number {@code version} did. */
    public static Action of(int version, boolean withdrawn, boolean wasWithdrawnBefore) {
        if (withdrawn) {
            return WITHDRAWN;
        }
        if (version == 1) {
            return CREATED;
        }
        return wasWithdrawnBefore ? REVIVED : UPDATED;
    }

    @JsonValue
    public String onWire() {
        return name().toLowerCase(Locale.ROOT);
    }
}
