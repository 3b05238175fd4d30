package org.pailbook.records.store;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.time.LocalDate;

/** Dates as {@code yyyy-MM-dd} text: same order, same meaning on every database, whatever the time zone of driver or server. */
@Converter(autoApply = true)
public class LocalDateText implements AttributeConverter<LocalDate, String> {
    @Override
    public String convertToDatabaseColumn(LocalDate date) {
        return date == null ? null : date.toString();
    }

    @Override
    public LocalDate convertToEntityAttribute(String text) {
        return text == null ? null : LocalDate.parse(text);
    }
}
