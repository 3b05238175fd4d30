package org.pailbook.records.upload;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Collectors;
import org.pailbook.records.exchange.FileUnit;
import org.pailbook.records.intake.Column;

/** Proposes what a column is by the words of its heading, from a list of our own; a person confirms it. */
final class HeaderWords {
    private static final Map<String, List<String>> WORDS = read();
    /** Words that name a unit, not what was measured. */
    private static final Map<String, FileUnit> UNITS = Map.of(
            "lb", FileUnit.LB,
            "lbs", FileUnit.LB,
            "pounds", FileUnit.LB,
            "l", FileUnit.LITRE,
            "ltr", FileUnit.LITRE,
            "litres", FileUnit.LITRE,
            "liter", FileUnit.LITRE,
            "litros", FileUnit.LITRE,
            "litre", FileUnit.LITRE);

    private static final Set<String> LEFT_OUT =
            Set.of("kg", "kgs", "pct", "percent", "per", "ml", "1000", "thousand", "x1000", "in", "of", "the");

    private HeaderWords() {}

    private static Map<String, List<String>> read() {
        try (InputStream in = HeaderWords.class.getResourceAsStream("header-words.properties");
                InputStreamReader text = new InputStreamReader(in, StandardCharsets.UTF_8)) {
            Properties words = new Properties();
            words.load(text);
            return words.stringPropertyNames().stream()
                    .collect(Collectors.toMap(
                            name -> name,
                            name -> Arrays.stream(words.getProperty(name).split(","))
                                    .map(String::strip)
                                    .toList()));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** One for each heading: the column's name, or empty text. No column is proposed twice. */
    static List<String> proposed(List<String> headings, List<Column> columns) {
        List<String> proposed = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (String heading : headings) {
            String found = columns.stream()
                    .map(Column::name)
                    .filter(name -> !taken.contains(name) && isNamed(heading, name))
                    .findFirst()
                    .orElse("");
            taken.add(found);
            proposed.add(found);
        }
        return proposed;
    }

    /** Headings that could be columns of the kind. */
    static long fitting(List<String> headings, List<Column> columns) {
        return proposed(headings, columns).stream()
                .filter(name -> !name.isEmpty())
                .count();
    }

    private static boolean isNamed(String heading, String column) {
        String plain = plain(heading);
        return plain.equals(plain(column))
                || WORDS.getOrDefault(column, List.of()).contains(plain);
    }

    /** A unit the heading names, that is not ours. */
    static Optional<FileUnit> unit(String heading) {
        return words(heading).stream()
                .map(UNITS::get)
                .filter(unit -> unit != null)
                .findFirst();
    }

    /** Small letters without accents and units, parted by single blanks. */
    static String plain(String heading) {
        return words(heading).stream()
                .filter(word -> !LEFT_OUT.contains(word) && !UNITS.containsKey(word))
                .collect(Collectors.joining(" "));
    }

    private static List<String> words(String heading) {
        String plain = Normalizer.normalize(heading, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .strip();
        return plain.isEmpty() ? List.of() : List.of(plain.split(" "));
    }

    /** The names, those that stand twice numbered, so that each is one of its own. */
    static List<String> distinct(List<String> headings) {
        Map<String, Integer> times = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (String heading : headings) {
            int time = times.merge(heading, 1, Integer::sum);
            names.add(time == 1 ? heading : heading + " #" + time);
        }
        return names;
    }
}
