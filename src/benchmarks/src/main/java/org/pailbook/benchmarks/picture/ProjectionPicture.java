package org.pailbook.benchmarks.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * Draws a cow of the sample herd as SVG: her tests, the milk expected of each day of 305, and the band 80 in 100 weights lie in.
 *
 * <p>Arguments: folder of the sample herd, number of the cow, as-of date, file to write.
 */
public final class ProjectionPicture {
    private static final int LEFT = 60;
    private static final int RIGHT = 20;
    private static final int TOP = 64;
    private static final int BOTTOM = 48;
    private static final int WIDTH = 760;
    private static final int HEIGHT = 400;

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

    /** @param later the same cow with what was weighed after the as-of day, drawn hollow */
    private static String svg(CowOnDay cow, CowOnDay later) {
        Lactation lactation = cow.lactations().latest().orElseThrow().lactation();
        Projection305 projection = cow.projection(cow.lactations().latest().orElseThrow());
        Figure milk = projection.milk305();
        Interval narrow = milk.interval(0.80).orElseThrow();
        double[] kg = projection.dailyMilkKg();
        List<Interval> band = projection.dailyBand(Coverage.EIGHTY_PERCENT);
        double most = band.stream().mapToDouble(Interval::high).max().orElseThrow();
        double topKg = 10 * Math.ceil(most / 10);
        StringBuilder svg = new StringBuilder();
        svg.append(text(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"title desc\""
                        + " font-family=\"sans-serif\" font-size=\"13\">%n",
                WIDTH, HEIGHT));
        String told = text(
                "%s, parity %d, as of %s: %,.0f kg in 305 days (%,.0f to %,.0f, 80 %%)",
                cow.animal(), lactation.parity(), cow.asOf(), milk.orThrow(), narrow.low(), narrow.high());
        svg.append(text("<title id=\"title\">%s</title>%n", told));
        svg.append(text(
                "<desc id=\"desc\">Milk in kg per day by days in milk. %d tests used, a line for what each day is expected to give, and a band"
                        + " that 80 of 100 weights should lie in.</desc>%n",
                projection.tests()));
        svg.append(text("<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>%n", WIDTH, HEIGHT));
        svg.append(text("<text x=\"%d\" y=\"22\" font-weight=\"bold\" fill=\"#111\">%s</text>%n", LEFT, told));
        svg.append(text(
                "<text x=\"%d\" y=\"42\" fill=\"#333\">filled: tests used; hollow: weighed later, not known then; line and band: each day's"
                        + " milk, 80 %%</text>%n",
                LEFT));
        for (int level = 0; level <= topKg; level += 10) {
            svg.append(text(
                    "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#ddd\"/><text x=\"%d\" y=\"%.1f\""
                            + " text-anchor=\"end\" fill=\"#333\">%d</text>%n",
                    LEFT, WIDTH - RIGHT, y(level, topKg), y(level, topKg), LEFT - 8, y(level, topKg) + 4, level));
        }
        for (int day = 0; day <= 300; day += 50) {
            svg.append(text(
                    "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" fill=\"#333\">%d</text>%n",
                    x(day), HEIGHT - BOTTOM + 18, day));
        }
        svg.append(text(
                "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" fill=\"#333\">days in milk</text>%n",
                x(152), HEIGHT - 10));
        svg.append(text(
                "<text x=\"16\" y=\"%.1f\" transform=\"rotate(-90 16 %.1f)\" text-anchor=\"middle\" fill=\"#333\">kg per"
                        + " day</text>%n",
                y(topKg / 2, topKg), y(topKg / 2, topKg)));
        svg.append("<polygon fill=\"#cfe3f5\" points=\"");
        for (int i = 0; i < kg.length; i++) {
            svg.append(text("%.1f,%.1f ", x(i + 1), y(band.get(i).high(), topKg)));
        }
        for (int i = kg.length - 1; i >= 0; i--) {
            svg.append(text("%.1f,%.1f ", x(i + 1), y(band.get(i).low(), topKg)));
        }
        svg.append("\"/>\n<polyline fill=\"none\" stroke=\"#1f5f99\" stroke-width=\"2\" points=\"");
        for (int i = 0; i < kg.length; i++) {
            svg.append(text("%.1f,%.1f ", x(i + 1), y(kg[i], topKg)));
        }
        svg.append("\"/>\n");
        for (TestDay test : later.lactations()
                .ofParity(lactation.parity())
                .orElseThrow()
                .lactation()
                .testDays()) {
            int day = lactation.daysInMilk(test.date());
            if (test.milkKg().isPresent() && day <= 305) {
                svg.append(text(
                        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"5\" stroke=\"#8a2b06\" stroke-width=\"2\" fill=\"%s\"/>%n",
                        x(day),
                        y(test.milkKg().getAsDouble(), topKg),
                        test.date().isAfter(cow.asOf()) ? "none" : "#8a2b06"));
            }
        }
        int today = lactation.daysInMilk(cow.asOf());
        svg.append(text(
                "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#111\" stroke-dasharray=\"5 4\"/><text x=\"%.1f\""
                        + " y=\"%d\" fill=\"#111\">day %d</text>%n",
                x(today), x(today), TOP, HEIGHT - BOTTOM, x(today) + 5, HEIGHT - BOTTOM - 8, today));
        return svg.append("</svg>\n").toString();
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form.replace("%n", "\n"), values);
    }

    private static double x(int day) {
        return LEFT + day * (WIDTH - LEFT - RIGHT) / 305.0;
    }

    private static double y(double kg, double topKg) {
        return HEIGHT - BOTTOM - kg * (HEIGHT - TOP - BOTTOM) / topKg;
    }
}
