package org.pailbook.lactation.curve;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * The 24 reference series of the open data and the fits of R 4.2.2 and scipy 1.10.1 to them, as the folder's README describes.
 */
final class ReferenceFits {
    private ReferenceFits() {}

    /** One series of test days. */
    record Series(String name, double[] daysInMilk, double[] milkKg, Lactation lactation) {}

    /** One row of a file of fits, by column name. */
    record Fit(String series, Map<String, String> cells) {
        String text(String column) {
            return cells.get(column);
        }

        double number(String column) {
            return Double.parseDouble(cells.get(column));
        }

        boolean isFitted() {
            return text("status").equals("ok") || text("status").equals("exact");
        }

        boolean isExact() {
            return text("status").equals("exact");
        }

        double[] numbers(List<String> columns) {
            return columns.stream().mapToDouble(this::number).toArray();
        }
    }

    static Map<String, Series> series() {
        Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();
        read("input.csv")
                .forEach(row -> rows.computeIfAbsent(row.get("series"), name -> new ArrayList<>())
                        .add(row));
        Map<String, Series> series = new LinkedHashMap<>();
        rows.forEach((name, tests) -> series.put(name, series(name, tests)));
        return series;
    }

    private static Series series(String name, List<Map<String, String>> rows) {
        List<TestDay> tests = rows.stream()
                .map(row ->
                        TestDay.ofMilk(LocalDate.parse(row.get("test_date")), Double.parseDouble(row.get("milk_kg"))))
                .toList();
        return new Series(
                name,
                rows.stream()
                        .mapToDouble(row -> Double.parseDouble(row.get("dim")))
                        .toArray(),
                rows.stream()
                        .mapToDouble(row -> Double.parseDouble(row.get("milk_kg")))
                        .toArray(),
                Lactation.inMilk(
                        Integer.parseInt(rows.get(0).get("parity")),
                        LocalDate.parse(rows.get(0).get("calving_date")),
                        tests));
    }

    static List<Fit> fits(String file) {
        return read(file).stream().map(row -> new Fit(row.get("series"), row)).toList();
    }

    private static List<Map<String, String>> read(String file) {
        Path path = SharedData.orSkip().resolve("reference-fits").resolve(file);
        try {
            List<String> lines = Files.readAllLines(path);
            List<String> header = cells(lines.get(0));
            return lines.stream()
                    .skip(1)
                    .map(line -> {
                        List<String> cells = cells(line);
                        Map<String, String> row = new LinkedHashMap<>();
                        for (int i = 0; i < header.size(); i++) {
                            row.put(header.get(i), cells.get(i));
                        }
                        return row;
                    })
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Splits at commas outside quotation marks. */
    private static List<String> cells(String line) {
        return Arrays.asList(line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1));
    }
}
