package org.pailbook.records.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Days and instants come back from the database as they went in; what we did not write is read as the JDK reads it, or not at all. */
class TextOfTimesLawTest {
    private final LocalDateText dates = new LocalDateText();
    private final InstantText instants = new InstantText();

    @Test
    void daysComeBack() {
        for (LocalDate day = LocalDate.of(1899, 12, 1); day.getYear() < 2101; day = day.plusDays(1)) {
            String text = dates.convertToDatabaseColumn(day);
            assertThat(dates.convertToEntityAttribute(text)).isEqualTo(day).isEqualTo(LocalDate.parse(text));
        }
        for (LocalDate far :
                new LocalDate[] {LocalDate.of(0, 1, 1), LocalDate.of(9999, 12, 31), LocalDate.MIN, LocalDate.MAX}) {
            assertThat(dates.convertToEntityAttribute(dates.convertToDatabaseColumn(far)))
                    .isEqualTo(far);
        }
        assertThat(dates.convertToEntityAttribute(null)).isNull();
    }

    @Test
    void instantsComeBackToTheMillisecond() {
        Random random = new Random(20_261_126);
        for (int i = 0; i < 20_000; i++) {
            Instant instant = Instant.ofEpochSecond(
                    random.nextLong(-2_000_000_000L, 4_000_000_000L), random.nextInt(1_000_000_000));
            String text = instants.convertToDatabaseColumn(instant);
            assertThat(instants.convertToEntityAttribute(text))
                    .isEqualTo(instant.truncatedTo(ChronoUnit.MILLIS))
                    .isEqualTo(Instant.parse(text));
        }
        assertThat(instants.convertToEntityAttribute(null)).isNull();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2025-02-30",
                "2025-13-01",
                "2025-1-011",
                "2025/01/01",
                "20250-1-01",
                "+025-01-01",
                "２０２５-01-01",
                "",
                "2025-01-01T00:00"
            })
    void otherDaysAreNotGuessed(String text) {
        assertThatThrownBy(() -> dates.convertToEntityAttribute(text)).isInstanceOf(java.time.DateTimeException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2025-01-01T25:00:00.000Z",
                "2025-01-01T00:60:00.000Z",
                "2025-01-01 00:00:00.000Z",
                "2025-01-01T00:00:00.00xZ",
                "2025-01-01T00:00:00.0000",
                "2025-02-30T00:00:00.000Z"
            })
    void otherInstantsAreNotGuessed(String text) {
        assertThatThrownBy(() -> instants.convertToEntityAttribute(text))
                .isInstanceOf(java.time.DateTimeException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2025-01-01T00:00:00Z",
                "2025-01-01T00:00:00.123456Z",
                "2016-12-31T23:59:60.000Z",
                "2025-01-01T24:00:00.000Z",
                "2025-01-01T00:00:00.000+00:00"
            })
    void whatTheJdkReadsIsReadThatWay(String text) {
        Instant jdk;
        try {
            jdk = Instant.parse(text);
        } catch (DateTimeParseException refused) {
            assertThatThrownBy(() -> instants.convertToEntityAttribute(text))
                    .isInstanceOf(DateTimeParseException.class);
            return;
        }
        assertThat(instants.convertToEntityAttribute(text)).isEqualTo(jdk);
    }
}
