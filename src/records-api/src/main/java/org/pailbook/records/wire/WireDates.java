package org.pailbook.records.wire;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.pailbook.records.problem.Problem;

/** Dates on the wire: {@code yyyy-MM-dd}, a real day, 1990 to 2100. */
public final class WireDates {
    public static final String EXPECTED = "a date yyyy-MM-dd from 1990-01-01 to 2100-12-31";

    public static final String EXPECTED_INSTANT =
            "an instant with its offset, such as 2025-11-12T06:30:00+01:00, from 1990 to 2100";

    private static final int LENGTH = "yyyy-MM-dd".length();
    private static final int FIRST_YEAR = 1990;
    private static final int LAST_YEAR = 2100;

    private WireDates() {}

    /** An instant with offset or {@code Z}, RFC 3339, its day within the years of dates; cut to milliseconds. */
    public static Optional<Instant> instant(String text) {
        try {
            OffsetDateTime at = OffsetDateTime.parse(text, DateTimeFormatter.ISO_OFFSET_DATE_TIME);
            return hasSign(text) || at.getYear() < FIRST_YEAR || at.getYear() > LAST_YEAR
                    ? Optional.empty()
                    : Optional.of(at.toInstant().truncatedTo(ChronoUnit.MILLIS));
        } catch (DateTimeException notAnInstant) {
            return Optional.empty();
        }
    }

    public static Optional<LocalDate> parse(String text) {
        // by hand: in a table of a million rows a formatter is felt
        if (text.length() != LENGTH || text.charAt(4) != '-' || text.charAt(7) != '-') {
            return Optional.empty();
        }
        int year = digits(text, 0, 4);
        int month = digits(text, 5, 7);
        int day = digits(text, 8, LENGTH);
        if (year < FIRST_YEAR || year > LAST_YEAR) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException notADate) {
            return Optional.empty();
        }
    }

    /** Whether the year has a sign, with which the formatters also take years of more than four digits: {@code +02024-02-29}. */
    static boolean hasSign(String text) {
        return text.startsWith("+") || text.startsWith("-");
    }

    /** The number that ASCII digits make; -1, no part of any date, if one is none. */
    private static int digits(String text, int from, int to) {
        int number = 0;
        for (int i = from; i < to; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            number = number * 10 + digit;
        }
        return number;
    }

    /** A date given as a query parameter; empty when it was not given. */
    public static Optional<LocalDate> parameter(String name, String text) {
        if (text == null) {
            return Optional.empty();
        }
        return Optional.of(parse(text).orElseThrow(() -> Problem.badParameter(name, "expected " + EXPECTED, text)));
    }
}
