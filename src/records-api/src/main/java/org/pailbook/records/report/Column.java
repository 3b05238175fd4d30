package org.pailbook.records.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * One column of a report.
 *
 * @param name snake_case, with its unit; never changed once it was published
 * @param unit empty for what has none
 * @param meaning in words, for whoever reads the list of reports
 * @param value what stands in a row; null where it is not known: text, a {@link LocalDate}, a {@link Number} or a {@link Boolean}
 */
record Column<R>(String name, Kind kind, String unit, String meaning, Function<R, Object> value) {
    /** What stands in the cells of a column. */
    enum Kind {
        TEXT,
        DATE,
        NUMBER,
        BOOLEAN
    }

    static <R> Column<R> text(String name, String meaning, Function<R, String> value) {
        return new Column<>(name, Kind.TEXT, "", meaning, row -> {
            String text = value.apply(row);
            return text == null || text.isEmpty() ? null : text;
        });
    }

    static <R> Column<R> date(String name, String meaning, Function<R, Optional<LocalDate>> value) {
        return new Column<>(
                name, Kind.DATE, "", meaning, row -> value.apply(row).orElse(null));
    }

    static <R> Column<R> count(String name, String unit, String meaning, Function<R, Integer> value) {
        return new Column<>(name, Kind.NUMBER, unit, meaning, value::apply);
    }

    /** A number as it was entered. */
    static <R> Column<R> measured(String name, String unit, String meaning, Function<R, OptionalDouble> value) {
        return new Column<>(name, Kind.NUMBER, unit, meaning, row -> {
            OptionalDouble number = value.apply(row);
            return number.isPresent() ? BigDecimal.valueOf(number.getAsDouble()) : null;
        });
    }

    /** A computed number, rounded to so many decimals. */
    static <R> Column<R> computed(
            String name, String unit, int decimals, String meaning, Function<R, OptionalDouble> value) {
        return new Column<>(name, Kind.NUMBER, unit, meaning, row -> {
            OptionalDouble number = value.apply(row);
            return number.isPresent() ? rounded(number.getAsDouble(), decimals) : null;
        });
    }

    private static BigDecimal rounded(double number, int decimals) {
        return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    }

    /** The same name as members of JSON are called. */
    String member() {
        StringBuilder member = new StringBuilder();
        for (String word : name.split("_")) {
            member.append(
                    member.isEmpty()
                            ? word
                            : word.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + word.substring(1));
        }
        return member.toString();
    }
}
