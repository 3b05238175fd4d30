package org.pailbook.records.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * A record that is known by an instant. Its day is that of the herd's zone; two within one minute are the same record, since nobody writes
 * down seconds twice alike.
 */
public interface Timed {
    Instant at();

    /** Keeps the instant, and beside it the minute as the database holds it unique. */
    void setAt(Instant at);

    /** The minute as text, {@code 2025-11-12T06:31:00Z}: the same for every second of it. */
    static String minute(Instant at) {
        return at.truncatedTo(ChronoUnit.MINUTES).toString();
    }
}
