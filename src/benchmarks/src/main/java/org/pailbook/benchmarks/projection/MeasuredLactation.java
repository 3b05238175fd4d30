package org.pailbook.benchmarks.projection;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * A lactation with its test days and, where known, what its daily weights add up to.
 *
 * @param animal tells cows apart
 * @param breed as in the file
 * @param lactation all its test days
 * @param milk305Kg true milk of days 1 to 305, kg; empty where it is not known
 */
record MeasuredLactation(String animal, String breed, Lactation lactation, OptionalDouble milk305Kg) {

    /**
     * Reads the first file of the folder whose name begins with {@code testdays} and the first that begins with {@code truth}: CSV with
     * named columns, animal and parity in both.
     */
    static List<MeasuredLactation> read(Path folder) throws IOException {
        Map<String, List<Map<String, String>>> tests = new LinkedHashMap<>();
        for (Map<String, String> row : table(folder, "testdays")) {
            tests.computeIfAbsent(key(row), unused -> new ArrayList<>()).add(row);
        }
        Map<String, OptionalDouble> truth = new HashMap<>();
        for (Map<String, String> row : table(folder, "truth")) {
            truth.put(key(row), number(row, "milk_305_kg"));
        }
        List<MeasuredLactation> lactations = new ArrayList<>();
        tests.forEach((key, rows) -> {
            Map<String, String> first = rows.get(0);
            LocalDate calving = LocalDate.parse(first.get("calving_date"));
            List<TestDay> days = rows.stream().map(MeasuredLactation::testDay).toList();
            lactations.add(new MeasuredLactation(
                    first.get("animal"),
                    first.get("breed"),
                    Lactation.inMilk(Integer.parseInt(first.get("parity")), calving, days),
                    truth.getOrDefault(key, OptionalDouble.empty())));
        });
        return lactations;
    }

    /** The same with its first tests only. */
    ComparedMethods.Begun begun(int tests) {
        return new ComparedMethods.Begun(
                this,
                Lactation.inMilk(
                        lactation.parity(),
                        lactation.calvingDate(),
                        lactation.testDays().subList(0, tests)));
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
        return row.get("animal") + "/" + row.get("parity");
    }

    private static OptionalDouble number(Map<String, String> row, String column) {
        String cell = row.getOrDefault(column, "");
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }

    private static List<Map<String, String>> table(Path folder, String begins) throws IOException {
        Path file;
        try (var files = Files.list(folder)) {
            file = files.filter(one -> one.getFileName().toString().startsWith(begins))
                    .filter(one -> one.getFileName().toString().endsWith(".csv"))
                    .sorted()
                    .findFirst()
                    .orElseThrow(() -> new IOException("no file " + begins + "*.csv in " + folder));
        }
        List<String> lines = Files.readAllLines(file);
        String[] columns = lines.get(0).split(",");
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < columns.length; i++) {
                row.put(columns[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }
}
