package org.pailbook.records.wire;

import java.time.Instant;
import java.time.LocalDate;

/**
 * The day a figure is for, what was known for it, and the moment it was computed.
 *
 * @param day events after it take no part
 * @param knownAt versions recorded after it take no part; null for what was only posted
 * @param computedAt now
 */
public record AsOf(LocalDate day, Instant knownAt, Instant computedAt) {
    /** Of figures of what was only posted. */
    public AsOf(LocalDate day, Instant computedAt) {
        this(day, null, computedAt);
    }

    /** {@link #knownAt()} as it is sent; null where there is none. */
    public String knownAtText() {
        return knownAt == null ? null : knownAt.toString();
    }
}
