package org.pailbook.records.store;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** Instants as {@code yyyy-MM-ddTHH:mm:ss.SSSZ} text in UTC, always 24 characters, so that text order is time order. */
@Converter(autoApply = true)
public class InstantText implements AttributeConverter<Instant, String> {
    private static final DateTimeFormatter FIXED_WIDTH =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

    @Override
    public String convertToDatabaseColumn(Instant instant) {
        return instant == null ? null : FIXED_WIDTH.format(instant);
    }

    @Override
    public Instant convertToEntityAttribute(String text) {
        return text == null ? null : Instant.parse(text);
    }
}
