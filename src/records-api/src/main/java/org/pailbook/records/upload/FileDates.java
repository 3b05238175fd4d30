package org.pailbook.records.upload;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Days and hours as files write them. Which of two numbers is the month, somebody said, unless the year comes first. */
public enum FileDates {
    /** {@code 2025-11-12}. */
    YEAR_FIRST,
    /** {@code 12.11.2025}. */
    DAY_FIRST,
    /** {@code 11/12/2025}. */
    MONTH_FIRST;

    private static final Pattern ISO = Pattern.compile("([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})(?:[T ](.+))?");
    private static final Pattern OTHER = Pattern.compile("([0-9]{1,2})[./-]([0-9]{1,2})[./-]([0-9]{4})(?:,? +(.+))?");
    private static final Pattern HOUR =
            Pattern.compile("([0-9]{1,2})[:.]([0-9]{2})(?::([0-9]{2})(?:\\.[0-9]+)?)?(Z|[+-][0-9]{2}:[0-9]{2})?");

    /** The numbers of a day; of a year-first one in that order. */
    record Parts(boolean isIso, int first, int second, int third, String rest) {}

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<FileDates> of(String wireName) {
        for (FileDates dates : values()) {
            if (dates.wireName().equals(wireName)) {
                return Optional.of(dates);
            }
        }
        return Optional.empty();
    }

    /** Null if it is no day. */
    static Parts parts(String cell) {
        Matcher iso = ISO.matcher(cell);
        if (iso.matches()) {
            return parts(true, iso);
        }
        Matcher other = OTHER.matcher(cell);
        return other.matches() ? parts(false, other) : null;
    }

    private static Parts parts(boolean isIso, Matcher found) {
        return new Parts(
                isIso,
                Integer.parseInt(found.group(1)),
                Integer.parseInt(found.group(2)),
                Integer.parseInt(found.group(3)),
                found.group(4) == null ? "" : found.group(4).strip());
    }

    private Optional<LocalDate> date(Parts parts) {
        try {
            return switch (parts.isIso() ? YEAR_FIRST : this) {
                case YEAR_FIRST ->
                    parts.isIso()
                            ? Optional.of(LocalDate.of(parts.first(), parts.second(), parts.third()))
                            : Optional.empty();
                case DAY_FIRST -> Optional.of(LocalDate.of(parts.third(), parts.second(), parts.first()));
                case MONTH_FIRST -> Optional.of(LocalDate.of(parts.third(), parts.first(), parts.second()));
            };
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    /** A day as the API reads it; an hour of midnight behind it, as programs add it, is left out. Empty if it is none. */
    Optional<String> day(String cell) {
        Parts parts = parts(cell);
        return parts == null || !parts.rest().matches("|0?0:00(:00(\\.0+)?)?")
                ? Optional.empty()
                : date(parts).map(LocalDate::toString);
    }

    /** An instant as the API reads it; without an offset it is the hour in the herd's zone. Empty if it is none. */
    Optional<String> instant(String cell, ZoneId zone) {
        Parts parts = parts(cell);
        Matcher hour = HOUR.matcher(parts == null ? "" : parts.rest());
        if (!hour.matches()) {
            return Optional.empty();
        }
        try {
            int second = hour.group(3) == null ? 0 : Integer.parseInt(hour.group(3));
            LocalTime time = LocalTime.of(Integer.parseInt(hour.group(1)), Integer.parseInt(hour.group(2)), second);
            ZoneId at = hour.group(4) == null ? zone : ZoneId.of(hour.group(4));
            return date(parts)
                    .map(day -> day.atTime(time)
                            .atZone(at)
                            .toOffsetDateTime()
                            .toInstant()
                            .toString());
        } catch (DateTimeException noSuchHour) {
            return Optional.empty();
        }
    }
}
