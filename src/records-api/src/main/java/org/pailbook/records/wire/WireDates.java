package org.pailbook.records.wire;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Optional;
import org.pailbook.records.problem.Problem;

/** Dates on the wire: {@code yyyy-MM-dd}, a real day, 1990 to 2100. */
public final class WireDates {
    public static final String EXPECTED = "a date yyyy-MM-dd from 1990-01-01 to 2100-12-31";

    private static final DateTimeFormatter STRICT =
            DateTimeFormatter.ofPattern("uuuu-MM-dd").withResolverStyle(ResolverStyle.STRICT);
    private static final int FIRST_YEAR = 1990;
    private static final int LAST_YEAR = 2100;

    private WireDates() {}

    public static Optional<LocalDate> parse(String text) {
        try {
            LocalDate date = LocalDate.parse(text, STRICT);
            return date.getYear() < FIRST_YEAR || date.getYear() > LAST_YEAR ? Optional.empty() : Optional.of(date);
        } catch (DateTimeException notADate) {
            return Optional.empty();
        }
    }

    /** A date given as a query parameter; empty when it was not given. */
    public static Optional<LocalDate> parameter(String name, String text) {
        if (text == null) {
            return Optional.empty();
        }
        return Optional.of(parse(text).orElseThrow(() -> Problem.badParameter(name, "expected " + EXPECTED, text)));
    }
}
