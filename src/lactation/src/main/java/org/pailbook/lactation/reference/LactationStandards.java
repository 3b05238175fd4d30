package org.pailbook.lactation.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * The lactation standards shipped with the library, by breed and parity.
 *
 * <p>They were estimated from 144 lactations of three breeds at one research source; the resource file
 * {@code lactation-standards.csv} says how. An unknown breed gets the pooled standard of her parity with the finding
 * {@link FindingCode#REFERENCE_OF_OTHER_BREED}.
 */
public final class LactationStandards {
    /** Where the shipped curves and spreads come from. */
    public static final Citation SOURCE = new Citation(
            "Friggens, N. C., Ridder, C., Lovendahl, P.",
            2007,
            "J. Dairy Sci. 90:5453-5467; curves and spreads estimated by this library on an open part of the data (R package doBy)",
            HowKnown.OURS);

    private static final String POOLED = "POOLED";
    private static final List<Row> ROWS = readRows("lactation-standards.csv", LactationStandards::wilmink);
    private static final List<Row> REFINED = readRows("refined-standards.csv", LactationStandards::withPeak);
    // change in the first weeks as of so many days more, over so many days; see refined-standards.csv
    private static final double EARLY_EXTRA_DAYS = 240;
    private static final double EARLY_OVER_DAYS = 45;
    private static final double PEAK_PER_DAY = 0.02;

    private static final TraitCorrelations CORRELATIONS = readCorrelations();
    private static final Map<String, String> GROUP_OF_SPELLING = readSpellings();

    private LactationStandards() {}

    private record Row(String breedGroup, String trait, int parityFrom, int parityTo, LactationStandard standard) {
        boolean covers(String group, LactationTrait ofTrait, int parity) {
            return breedGroup.equals(group)
                    && trait.equals(ofTrait.wireName())
                    && parity >= parityFrom
                    && parity <= parityTo;
        }
    }

    /**
     * The milk standard for a cow.
     *
     * @param breed a breed code or name; anything unknown, also blank, gets the pooled standard
     * @param parity 1 or more; 2 and all later share a standard
     */
    public static LactationStandard forCow(String breed, int parity) {
        return forCow(breed, parity, LactationTrait.MILK);
    }

    /** The standards of milk, fat, protein and cell score for a cow, and how they go together. */
    public static TraitStandards traitsForCow(String breed, int parity) {
        return TraitStandards.ofYields(
                        forCow(breed, parity, LactationTrait.MILK),
                        forCow(breed, parity, LactationTrait.FAT),
                        forCow(breed, parity, LactationTrait.PROTEIN),
                        CORRELATIONS)
                .withCells(forCow(breed, parity, LactationTrait.CELLS));
    }

    /**
     * The standard of one trait for a cow.
     *
     * @param breed a breed code or name; anything unknown, also blank, gets the pooled standard
     * @param parity 1 or more; 2 and all later share a standard
     */
    public static LactationStandard forCow(String breed, int parity, LactationTrait trait) {
        return forCow(ROWS, breed, parity, trait);
    }

    /**
     * The refined standard of one trait for a cow: two bends more in the mean, and a faster change in the first weeks. On the open test days its errors are smaller
     * than those of {@link #forCow}, and its intervals hold better.
     *
     * @param breed a breed code or name; anything unknown, also blank, gets the pooled standard
     * @param parity 1 or more; 2 and all later share a standard
     */
    public static LactationStandard refinedForCow(String breed, int parity, LactationTrait trait) {
        return forCow(REFINED, breed, parity, trait);
    }

    /** The refined standards of milk, fat, protein and cell score for a cow, and how they go together. */
    public static TraitStandards refinedTraitsForCow(String breed, int parity) {
        return TraitStandards.ofYields(
                        refinedForCow(breed, parity, LactationTrait.MILK),
                        refinedForCow(breed, parity, LactationTrait.FAT),
                        refinedForCow(breed, parity, LactationTrait.PROTEIN),
                        CORRELATIONS)
                .withCells(refinedForCow(breed, parity, LactationTrait.CELLS));
    }

    private static LactationStandard forCow(List<Row> rows, String breed, int parity, LactationTrait trait) {
        if (parity < 1) {
            throw new IllegalArgumentException("parity (" + parity + ") must be at least 1");
        }
        String group = GROUP_OF_SPELLING.get(simplified(breed));
        if (group != null) {
            return find(rows, group, trait, parity);
        }
        return find(rows, POOLED, trait, parity)
                .withFinding(Finding.of(FindingCode.REFERENCE_OF_OTHER_BREED)
                        .withField("breed")
                        .withSeen(breed.isBlank() ? Sentence.of(SentenceCode.NONE) : Sentence.verbatim(breed)));
    }

    /** The code of the breed group a spelling stands for; empty if no standard of its own is shipped for it. */
    public static Optional<String> breedGroup(String breed) {
        return Optional.ofNullable(GROUP_OF_SPELLING.get(simplified(breed)));
    }

    /** How milk, fat and protein go together, as shipped. */
    public static TraitCorrelations correlations() {
        return CORRELATIONS;
    }

    private static LactationStandard find(List<Row> rows, String group, LactationTrait trait, int parity) {
        int shelf = Math.min(parity, 99);
        return rows.stream()
                .filter(row -> row.covers(group, trait, shelf))
                .findFirst()
                .orElseThrow()
                .standard();
    }

    private static String simplified(String breed) {
        return breed.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "");
    }

    /** Mean curve of a line of a table, days 1 to 305. */
    @FunctionalInterface
    private interface MeanCurve {
        IntToDoubleFunction of(Map<String, String> line);
    }

    private static IntToDoubleFunction wilmink(Map<String, String> line) {
        double a = number(line, "a");
        double b = number(line, "b");
        double c = number(line, "c");
        double k = number(line, "k_per_day");
        return day -> a + b * Math.exp(-k * day) + c * day;
    }

    /** The shapes a herd's mean may move by, and one that stays as it is: how steep the way to the peak and down from it is. */
    private static IntToDoubleFunction withPeak(Map<String, String> line) {
        double[] coefficients = {number(line, "a"), number(line, "b"), number(line, "c"), number(line, "d")};
        double peak = number(line, "f");
        return day -> {
            double sum = peak * Math.exp(-PEAK_PER_DAY * day);
            for (int k = 0; k < coefficients.length; k++) {
                sum += coefficients[k] * MeanUncertainty.shape(k, day);
            }
            return sum;
        };
    }

    private static List<Row> readRows(String resource, MeanCurve curves) {
        List<Row> rows = new ArrayList<>();
        for (Map<String, String> line : lines(resource)) {
            DailySpread spread = DailySpread.constant(number(line, "spread"), number(line, "r"), number(line, "e"));
            if (!line.containsKey("k_per_day")) {
                spread = spread.withEarlyPace(EARLY_EXTRA_DAYS, EARLY_OVER_DAYS);
            }
            int from = Integer.parseInt(line.get("parity_from"));
            int to = Integer.parseInt(line.get("parity_to"));
            String group = line.get("breed_group") + ", parity " + (from == to ? "" + from : from + " or more");
            boolean isScore = line.get("trait").equals(LactationTrait.CELLS.wireName());
            LactationStandard standard = LactationStandard.of(group, SOURCE, past305(curves.of(line), isScore), spread)
                    .withHerdLevelSdKgPerDay(number(line, "herd_level_sd"));
            rows.add(new Row(line.get("breed_group"), line.get("trait"), from, to, standard));
        }
        return List.copyOf(rows);
    }

    /**
     * The curve to day 305; after it a yield falls by the same share each day, so that the mean never turns negative, and a score stays. No data
     * stand behind days past 305 here: a rule of ours.
     */
    private static IntToDoubleFunction past305(IntToDoubleFunction curve, boolean isScore) {
        int last = DaysInMilk.STANDARD_LACTATION_DAYS;
        double lastKg = curve.applyAsDouble(last);
        double share = isScore ? 1 : Math.min(1, lastKg / curve.applyAsDouble(last - 1));
        return day -> day <= last ? curve.applyAsDouble(day) : lastKg * Math.pow(share, day - last);
    }

    private static TraitCorrelations readCorrelations() {
        double[][] lasting = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        double[][] daily = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        List<String> order = List.of("milk", "fat", "protein");
        for (Map<String, String> line : lines("trait-correlations.csv")) {
            int i = order.indexOf(line.get("trait"));
            int j = order.indexOf(line.get("other_trait"));
            lasting[i][j] = lasting[j][i] = number(line, "lasting");
            daily[i][j] = daily[j][i] = number(line, "daily");
        }
        return TraitCorrelations.of(lasting, daily);
    }

    private static Map<String, String> readSpellings() {
        Map<String, String> groups = new HashMap<>();
        for (Map<String, String> line : lines("breed-names.csv")) {
            groups.put(simplified(line.get("spelling")), line.get("breed_group"));
        }
        return Map.copyOf(groups);
    }

    private static double number(Map<String, String> line, String column) {
        return Double.parseDouble(line.get(column));
    }

    /** Lines that do not begin with #, the first of them naming the columns; no quoting. */
    private static List<Map<String, String>> lines(String resource) {
        try (InputStream in = LactationStandards.class.getResourceAsStream(resource);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            List<String> content =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            String[] columns = content.get(0).split(",");
            List<Map<String, String>> table = new ArrayList<>();
            for (String line : content.subList(1, content.size())) {
                String[] cells = line.split(",");
                Map<String, String> row = new HashMap<>();
                for (int i = 0; i < columns.length; i++) {
                    row.put(columns[i], cells[i]);
                }
                table.add(row);
            }
            return table;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + resource, e);
        }
    }
}
