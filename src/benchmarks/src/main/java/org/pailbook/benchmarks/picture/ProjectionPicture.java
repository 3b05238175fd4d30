package org.pailbook.benchmarks.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.picture.LactationPicture;
import org.pailbook.picture.PictureForm;

/**
 * Draws a cow of the sample herd as SVG: her tests, the milk expected of each day of 305, and the band 80 in 100 weights lie in.
 *
 * <p>Arguments: folder of the sample herd, number of the cow, as-of date, file to write.
 */
public final class ProjectionPicture {
    private ProjectionPicture() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 4) {
            System.err.println("usage: ProjectionPicture <sample-herd> <animal> <asOf> <file.svg>");
            System.exit(2);
        }
        LocalDate asOf = LocalDate.parse(arguments[2]);
        List<CowOnDay> cows = cows(Path.of(arguments[0]), asOf);
        HerdKnowledge herd = HerdKnowledge.ofCows(cows, asOf);
        CowOnDay cow = find(cows, arguments[1]).withHerd(herd);
        CowOnDay later = find(cows(Path.of(arguments[0]), asOf.plusDays(305)), arguments[1]);
        Files.writeString(Path.of(arguments[3]), svg(cow, later));
        System.out.println(cow.projection(cow.lactations().latest().orElseThrow()));
    }

    private static CowOnDay find(List<CowOnDay> cows, String animal) {
        return cows.stream()
                .filter(one -> one.animal().equals(animal))
                .findFirst()
                .orElseThrow();
    }

    private static List<CowOnDay> cows(Path folder, LocalDate asOf) throws IOException {
        Map<String, CowHistory.Builder> histories = new TreeMap<>();
        Map<String, String> breeds = new HashMap<>();
        for (Map<String, String> row : rows(folder.resolve("animals.csv"))) {
            breeds.put(row.get("animal_id"), row.get("breed"));
            histories.put(row.get("animal_id"), CowHistory.builder());
        }
        for (Map<String, String> row : rows(folder.resolve("calvings.csv"))) {
            String parity = row.get("parity");
            histories
                    .get(row.get("animal_id"))
                    .calving(new Calving(
                            date(row),
                            parity.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(parity))));
        }
        for (Map<String, String> row : rows(folder.resolve("dry-offs.csv"))) {
            histories.get(row.get("animal_id")).dryOff(new DryOff(date(row)));
        }
        for (Map<String, String> row : rows(folder.resolve("departures.csv"))) {
            histories.get(row.get("animal_id")).departure(new Departure(date(row)));
        }
        for (Map<String, String> row : rows(folder.resolve("test-days.csv"))) {
            histories
                    .get(row.get("animal_id"))
                    .testDay(new TestDay(
                            date(row),
                            number(row, "milk_kg"),
                            number(row, "fat_pct"),
                            number(row, "protein_pct"),
                            number(row, "lactose_pct"),
                            number(row, "scc_thousand_per_ml")));
        }
        List<CowOnDay> cows = new ArrayList<>();
        histories.forEach(
                (id, history) -> cows.add(CowOnDay.of(id, history.build(), breeds.getOrDefault(id, ""), asOf)));
        return cows;
    }

    private static LocalDate date(Map<String, String> row) {
        return LocalDate.parse(row.get("date"));
    }

    private static OptionalDouble number(Map<String, String> row, String column) {
        String cell = row.get(column);
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }

    private static List<Map<String, String>> rows(Path file) throws IOException {
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

    /** @param later the same cow with what was weighed after the as-of day */
    private static String svg(CowOnDay cow, CowOnDay later) {
        AssembledLactation latest = cow.lactations().latest().orElseThrow();
        Lactation lactation = latest.lactation();
        List<TestDay> weighedLater =
                later.lactations().ofParity(lactation.parity()).orElseThrow().lactation().testDays().stream()
                        .filter(test -> test.date().isAfter(cow.asOf()))
                        .toList();
        return LactationPicture.of(
                PictureForm.FILE, cow.animal(), lactation, cow.projection(latest), weighedLater, cow.asOf());
    }
}
