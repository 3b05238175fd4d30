package org.pailbook.lactation.finding;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * One thing the data lack or contradict: what it is, where, what was seen there and what was expected.
 *
 * @param code what it is
 * @param date the day it concerns, when it concerns one
 * @param field the field it concerns, by its wire name such as {@code fatPct}, when it concerns one
 * @param saidSeen the value seen, with its unit
 * @param saidExpected what would have been expected, with its unit
 * @param record the record it concerns, by the id it has outside the library, when there is one
 */
public record Finding(
        FindingCode code,
        Optional<LocalDate> date,
        Optional<String> field,
        Optional<Sentence> saidSeen,
        Optional<Sentence> saidExpected,
        Optional<String> record) {

    public Finding {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(saidSeen, "saidSeen");
        Objects.requireNonNull(saidExpected, "saidExpected");
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
        return new Finding(code, Optional.of(day), field, saidSeen, saidExpected, record);
    }

    public Finding withField(String wireName) {
        return new Finding(code, date, Optional.of(wireName), saidSeen, saidExpected, record);
    }

    /** A value as it is: a number with its unit, a text as recorded. */
    public Finding withSeen(String value) {
        return withSeen(Sentence.verbatim(value));
    }

    public Finding withSeen(SentenceCode said, Object... values) {
        return withSeen(Sentence.of(said, values));
    }

    public Finding withSeen(Sentence said) {
        return new Finding(code, date, field, Optional.of(said), saidExpected, record);
    }

    public Finding withExpected(String value) {
        return withExpected(Sentence.verbatim(value));
    }

    public Finding withExpected(SentenceCode said, Object... values) {
        return withExpected(Sentence.of(said, values));
    }

    public Finding withExpected(Sentence said) {
        return new Finding(code, date, field, saidSeen, Optional.of(said), record);
    }

    public Finding withRecord(String id) {
        return new Finding(code, date, field, saidSeen, saidExpected, Optional.of(id));
    }

    /** What was seen, in English. */
    public Optional<String> seen() {
        return saidSeen.map(Sentence::text);
    }

    /** What was expected, in English. */
    public Optional<String> expected() {
        return saidExpected.map(Sentence::text);
    }

    public Severity severity() {
        return code.severity();
    }

    /** English, one line: the meaning, then date, field, seen and expected as far as they are known. */
    public String text() {
        StringBuilder text = new StringBuilder(code.meaning());
        date.ifPresent(day -> text.append(" Day: ").append(day).append('.'));
        field.ifPresent(name -> text.append(" Field: ").append(name).append('.'));
        seen().ifPresent(value -> text.append(" Seen: ").append(value).append('.'));
        expected().ifPresent(value -> text.append(" Expected: ").append(value).append('.'));
        return text.toString();
    }
}
