package org.pailbook.records.entry;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** In which order the cows stand on the sheet. */
public enum SheetOrder {
    /** By ear tag, numbers in it counted as numbers. */
    TAG,
    NAME,
    /** As on the last weigh day. */
    LAST,
    /** As somebody wrote it down. */
    OWN;

    public static Optional<SheetOrder> of(String wireName) {
        return Arrays.stream(values())
                .filter(order -> order.wireName().equals(wireName))
                .findFirst();
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
