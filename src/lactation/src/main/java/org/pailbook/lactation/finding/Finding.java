package org.pailbook.lactation.finding;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * One thing the data lack or contradict: what it is, where, what was seen there and what was expected.
 *
 * @param code what it is
 * @param date the day it concerns, when it concerns one
 * @param field the field it concerns, by its wire name such as {@code fatPct}, when it concerns one
 * @param seen the value seen, as text with its unit
 * @param expected what would have been expected, as text with its unit
 * @param record the record it concerns, by the id it has outside the library, when there is one
 */
public record Finding(
        FindingCode code,
        Optional<LocalDate> date,
        Optional<String> field,
        Optional<String> seen,
        Optional<String> expected,
        Optional<String> record) {

    public Finding {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(seen, "seen");
        Objects.requireNonNull(expected, "expected");
        Objects.requireNonNull(record, "record");
    }

    public static Finding of(FindingCode code) {
        return new Finding(
                code, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    public static Finding on(LocalDate date, FindingCode code) {
        return of(code).withDate(date);
    }

    public Finding withDate(LocalDate day) {
        return new Finding(code, Optional.of(day), field, seen, expected, record);
    }

    public Finding withField(String wireName) {
        return new Finding(code, date, Optional.of(wireName), seen, expected, record);
    }

    public Finding withSeen(String value) {
        return new Finding(code, date, field, Optional.of(value), expected, record);
    }

    public Finding withExpected(String value) {
        return new Finding(code, date, field, seen, Optional.of(value), record);
    }

    public Finding withRecord(String id) {
        return new Finding(code, date, field, seen, expected, Optional.of(id));
    }

    public Severity severity() {
        return code.severity();
    }

    /** English, one line: the meaning, then date, field, seen and expected as far as they are known. */
    public String text() {
        StringBuilder text = new StringBuilder(code.meaning());
        date.ifPresent(day -> text.append(" Day: ").append(day).append('.'));
        field.ifPresent(name -> text.append(" Field: ").append(name).append('.'));
        seen.ifPresent(value -> text.append(" Seen: ").append(value).append('.'));
        expected.ifPresent(value -> text.append(" Expected: ").append(value).append('.'));
        return text.toString();
    }
}
