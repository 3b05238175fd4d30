package org.pailbook.records.access;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** What a key may do. */
public enum Scope {
    READ,
    WRITE,
    CALCULATE,
    ADMIN;

    /** Scopes as a key row keeps them, joined by blanks. */
    static Set<Scope> ofWords(String words) {
        return Arrays.stream(words.split(" "))
                .map(name -> valueOf(name.toUpperCase(Locale.ROOT)))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Scope.class)));
    }

    public String onWire() {
        return name().toLowerCase(Locale.ROOT);
    }
}
