package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonValue;

/** What a finding on a posted record means for it. */
public enum Grade {
    /** The record was not stored. */
    ERROR,
    /** Stored, and shown on every figure that uses it. */
    WARNING,
    /** Stored; good to know. */
    INFO;

    @JsonValue
    public String onWire() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
