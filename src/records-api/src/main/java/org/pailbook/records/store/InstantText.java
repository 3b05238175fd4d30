package org.pailbook.records.store;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** Instants as {@code yyyy-MM-ddTHH:mm:ss.SSSZ} text in UTC, always 24 characters, so that text order is time order. */
@Converter(autoApply = true)
public class InstantText implements AttributeConverter<Instant, String> {
    private static final int TEXT_LENGTH = 24;

    private static final DateTimeFormatter FIXED_WIDTH =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

    @Override
    public String convertToDatabaseColumn(Instant instant) {
        return instant == null ? null : FIXED_WIDTH.format(instant);
    }

    @Override
    public Instant convertToEntityAttribute(String text) {
        return text == null ? null : ofDatabase(text);
    }

    /** Number by number, as {@link LocalDateText} and for the same reason. */
    private static Instant ofDatabase(String text) {
        if (text.length() != TEXT_LENGTH
                || text.charAt(10) != 'T'
                || text.charAt(13) != ':'
                || text.charAt(16) != ':'
                || text.charAt(19) != '.'
                || text.charAt(23) != 'Z') {
            return Instant.parse(text);
        }
        int hour = FixedDigits.number(text, 11, 13);
        int minute = FixedDigits.number(text, 14, 16);
        int second = FixedDigits.number(text, 17, 19);
        int milli = FixedDigits.number(text, 20, 23);
        if (hour < 0 || minute < 0 || second < 0 || milli < 0 || hour > 23 || minute > 59 || second > 59) {
            return Instant.parse(text);
        }
        long day = LocalDateText.ofDatabase(text.substring(0, 10)).toEpochDay();
        return Instant.ofEpochSecond(((day * 24 + hour) * 60 + minute) * 60 + second, milli * 1_000_000L);
    }
}
