package org.pailbook.records.access;

import java.util.Locale;

/** What a key may do. */
public enum Scope {
    READ,
    WRITE,
    CALCULATE,
    ADMIN;

    public String onWire() {
        return name().toLowerCase(Locale.ROOT);
    }
}
