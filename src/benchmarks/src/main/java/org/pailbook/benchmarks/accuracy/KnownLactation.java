package org.pailbook.benchmarks.accuracy;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * A lactation with all its test days and, if it went on to day 305, what it came to.
 *
 * @param milk305Kg true total of days 1 to 305; empty if not known
 */
record KnownLactation(String animal, String breed, Lactation lactation, OptionalDouble milk305Kg) {

    /** All lactations of a folder: {@code testdays-*.csv} with one row a test, {@code truth-*.csv} with one a lactation. */
    static List<KnownLactation> read(Path folder) throws IOException {
        Map<String, List<Map<String, String>>> tests = new LinkedHashMap<>();
        for (Map<String, String> row : rows(folder, "testdays-*.csv")) {
            tests.computeIfAbsent(key(row), unused -> new ArrayList<>()).add(row);
        }
        Map<String, OptionalDouble> truth = new HashMap<>();
        for (Map<String, String> row : rows(folder, "truth-*.csv")) {
            truth.put(key(row), number(row, "milk_305_kg"));
        }
        List<KnownLactation> known = new ArrayList<>();
        tests.forEach((key, rows) -> {
            Map<String, String> first = rows.get(0);
            Lactation lactation = Lactation.inMilk(
                    Integer.parseInt(first.get("parity")),
                    LocalDate.parse(first.get("calving_date")),
                    rows.stream().map(KnownLactation::testDay).toList());
            known.add(new KnownLactation(
                    first.get("animal"),
                    first.get("breed"),
                    lactation,
                    truth.getOrDefault(key, OptionalDouble.empty())));
        });
        return known;
    }

    /** The lactation as it stood after so many tests; empty if it had fewer up to day 305. */
    Optional<Lactation> afterTests(int tests) {
        List<TestDay> days = lactation.testDays().stream()
                .filter(test -> lactation.daysInMilk(test.date()) <= 305)
                .toList();
        return days.size() < tests
                ? Optional.empty()
                : Optional.of(Lactation.inMilk(lactation.parity(), lactation.calvingDate(), days.subList(0, tests)));
    }

    private static TestDay testDay(Map<String, String> row) {
        return new TestDay(
                LocalDate.parse(row.get("test_date")),
                number(row, "milk_kg"),
                number(row, "fat_pct"),
                number(row, "protein_pct"),
                OptionalDouble.empty(),
                number(row, "scc_thousand"));
    }

    private static String key(Map<String, String> row) {
        return row.get("animal") + "/" + row.get("parity") + "/" + row.get("calving_date");
    }

    private static OptionalDouble number(Map<String, String> row, String column) {
        String cell = row.getOrDefault(column, "");
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }

    private static List<Map<String, String>> rows(Path folder, String pattern) throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, pattern)) {
            for (Path file : files) {
                List<String> lines = Files.readAllLines(file);
                String[] columns = lines.get(0).split(",");
                for (String line : lines.subList(1, lines.size())) {
                    String[] cells = line.split(",", -1);
                    Map<String, String> row = new HashMap<>();
                    for (int i = 0; i < columns.length; i++) {
                        row.put(columns[i], cells[i]);
                    }
                    rows.add(row);
                }
            }
        }
        return rows;
    }
}
