package org.pailbook.records.wire;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.pailbook.records.problem.Problem;

/** Instants in query parameters: RFC 3339 with an offset, 1990 to 2100, to the millisecond. */
public final class WireInstants {
    private static final DateTimeFormatter STRICT =
            DateTimeFormatter.ISO_OFFSET_DATE_TIME.withResolverStyle(ResolverStyle.STRICT);
    private static final int FIRST_YEAR = 1990;
    private static final int LAST_YEAR = 2100;

    private WireInstants() {}

    /** An instant given as a query parameter; empty when it was not given. */
    public static Optional<Instant> parameter(String name, String text) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            // a plus sign that was not percent-encoded arrives as a blank, which stands nowhere in an instant
            OffsetDateTime at = OffsetDateTime.parse(text.replace(' ', '+'), STRICT);
            if (!WireDates.hasSign(text.replace(' ', '+')) && at.getYear() >= FIRST_YEAR && at.getYear() <= LAST_YEAR) {
                return Optional.of(at.toInstant().truncatedTo(ChronoUnit.MILLIS));
            }
        } catch (DateTimeException notAnInstant) {
            // told below
        }
        throw Problem.badParameter(name, "expected an instant with offset such as 2025-12-01T20:11:04Z", text);
    }
}
