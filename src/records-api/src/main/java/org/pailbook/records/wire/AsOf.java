package org.pailbook.records.wire;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;

/**
 * The day a figure is for and the moment it was computed.
 *
 * @param day events after it take no part
 * @param computedAt now
 */
public record AsOf(LocalDate day, Instant computedAt) {

    /** From the query parameter {@code asOf}; today in the herd's zone when it was not given. */
    public static AsOf of(String parameter, ZoneId zone, Clock clock) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        return new AsOf(WireDates.parameter("asOf", parameter).orElse(LocalDate.ofInstant(now, zone)), now);
    }
}
