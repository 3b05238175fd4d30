package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The files of the sample herd read by plain splitting, and its figures added up from them row by row. Nothing here comes from the library
 * or the service, so that both can be held against it.
 */
final class SampleBook {
    static final Path FOLDER = Path.of("..", "..", "sample-herd");

    /** One row of test-days.csv; null where the cell is empty. */
    record Test(LocalDate date, Double milkKg, Double fatPct, Double proteinPct, Double cells) {}

    /** The book as it stands on this day; later rows are not looked at. */
    private final LocalDate day;

    private final List<String> animals = new ArrayList<>();
    private final Map<String, TreeSet<LocalDate>> calvings;
    private final Map<String, TreeSet<LocalDate>> dryOffs;
    private final Map<String, TreeSet<LocalDate>> departures;
    private final Map<String, TreeMap<LocalDate, Test>> tests = new HashMap<>();

    SampleBook(LocalDate day) {
        this.day = day;
        rows("animals").forEach(cells -> animals.add(cells[1]));
        this.calvings = days("calvings");
        this.dryOffs = days("dry-offs");
        this.departures = days("departures");
        for (String[] cells : rows("test-days")) {
            LocalDate date = LocalDate.parse(cells[2]);
            if (!date.isAfter(day)) {
                tests.computeIfAbsent(cells[1], any -> new TreeMap<>())
                        .put(
                                date,
                                new Test(date, number(cells[3]), number(cells[4]), number(cells[5]), number(cells[7])));
            }
        }
    }

    static String file(String kind) {
        try {
            return Files.readString(FOLDER.resolve(kind + ".csv"));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static List<String[]> rows(String kind) {
        return file(kind).lines().skip(1).map(line -> line.split(",", -1)).toList();
    }

    private static Double number(String cell) {
        return cell.isEmpty() ? null : Double.valueOf(cell);
    }

    private Map<String, TreeSet<LocalDate>> days(String kind) {
        Map<String, TreeSet<LocalDate>> days = new HashMap<>();
        for (String[] cells : rows(kind)) {
            LocalDate date = LocalDate.parse(cells[2]);
            if (!date.isAfter(day)) {
                days.computeIfAbsent(cells[1], any -> new TreeSet<>()).add(date);
            }
        }
        return days;
    }

    List<String> animals() {
        return animals;
    }

    LocalDate calved(String cow) {
        return calvings.containsKey(cow) ? calvings.get(cow).last() : null;
    }

    /** First such event on or after the last calving; null if there is none. */
    private LocalDate since(Map<String, TreeSet<LocalDate>> events, String cow) {
        LocalDate from = calved(cow) == null ? LocalDate.MIN : calved(cow);
        return events.containsKey(cow) ? events.get(cow).ceiling(from) : null;
    }

    String state(String cow) {
        if (since(departures, cow) != null) {
            return "left";
        }
        if (calved(cow) == null) {
            return "notCalved";
        }
        return since(dryOffs, cow) != null ? "dry" : "inMilk";
    }

    long daysInMilk(String cow) {
        return ChronoUnit.DAYS.between(calved(cow), day);
    }

    /** Last day she was milked in her last lactation; null while she is in milk. */
    LocalDate end(String cow) {
        LocalDate dry = since(dryOffs, cow);
        LocalDate left = since(departures, cow);
        if (dry == null || left == null) {
            return dry == null ? left : dry;
        }
        return dry.isBefore(left) ? dry : left;
    }

    LocalDate lastTestDate() {
        return tests.values().stream()
                .map(TreeMap::lastKey)
                .max(LocalDate::compareTo)
                .orElseThrow();
    }

    /** Tests of the last lactation that count: from day 5, with a weight, up to the end. */
    List<Test> tests(String cow) {
        List<Test> found = new ArrayList<>();
        if (calved(cow) == null || !tests.containsKey(cow)) {
            return found;
        }
        LocalDate end = end(cow);
        for (Test test : tests.get(cow).tailMap(calved(cow).plusDays(5), true).values()) {
            if (test.milkKg() != null && (end == null || !test.date().isAfter(end))) {
                assertThat(test.milkKg())
                        .as("ICAR's range, from memory: no row of the sample lies outside")
                        .isBetween(3.0, 99.9);
                found.add(test);
            }
        }
        return found;
    }

    /** Tests of the herd's last test date. */
    List<Test> lastTests() {
        return animals.stream()
                .flatMap(cow -> tests(cow).stream())
                .filter(test -> test.date().equals(lastTestDate()))
                .toList();
    }

    /**
     * Test interval method day by day: each day of days 1 to 305 stands on the straight line between its neighbouring tests, flat before the
     * first and after the last; a day's share of a line is the mean of its two ends, which makes the sum ICAR's.
     */
    double accumulatedKg(String cow) {
        List<Test> counted = tests(cow);
        LocalDate lastDay =
                end(cow) != null ? end(cow) : counted.get(counted.size() - 1).date();
        long days = Math.min(305, ChronoUnit.DAYS.between(calved(cow), lastDay));
        double sum = 0;
        for (int dim = 1; dim <= days; dim++) {
            sum += (line(cow, counted, dim - 1) + line(cow, counted, dim)) / 2;
        }
        return sum;
    }

    private double line(String cow, List<Test> counted, int dim) {
        LocalDate date = calved(cow).plusDays(dim);
        Test before = null;
        for (Test test : counted) {
            if (!test.date().isBefore(date)) {
                if (before == null || test.date().equals(date)) {
                    return test.milkKg();
                }
                double share = (double) ChronoUnit.DAYS.between(before.date(), date)
                        / ChronoUnit.DAYS.between(before.date(), test.date());
                return before.milkKg() + share * (test.milkKg() - before.milkKg());
            }
            before = test;
        }
        return before.milkKg();
    }

    /** Day of the first test that counts; 999 without one. */
    long firstTestDay(String cow) {
        List<Test> counted = tests(cow);
        return counted.isEmpty()
                ? 999
                : ChronoUnit.DAYS.between(calved(cow), counted.get(0).date());
    }
}
