package org.pailbook.records.store;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.time.LocalDate;

/** Dates as {@code yyyy-MM-dd} text: same order, same meaning on every database, whatever the time zone of driver or server. */
@Converter(autoApply = true)
public class LocalDateText implements AttributeConverter<LocalDate, String> {
    private static final int TEXT_LENGTH = 10;

    @Override
    public String convertToDatabaseColumn(LocalDate date) {
        return date == null ? null : date.toString();
    }

    @Override
    public LocalDate convertToEntityAttribute(String text) {
        return text == null ? null : ofDatabase(text);
    }

    /**
     * The text this class wrote, read number by number: a herd has tens of thousands of them, and a general parser does far
     * more over each. Anything else is left to that parser.
     */
    static LocalDate ofDatabase(String text) {
        if (text.length() != TEXT_LENGTH || text.charAt(4) != '-' || text.charAt(7) != '-') {
            return LocalDate.parse(text);
        }
        int year = FixedDigits.number(text, 0, 4);
        int month = FixedDigits.number(text, 5, 7);
        int day = FixedDigits.number(text, 8, 10);
        return year < 0 || month < 0 || day < 0 ? LocalDate.parse(text) : LocalDate.of(year, month, day);
    }
}
