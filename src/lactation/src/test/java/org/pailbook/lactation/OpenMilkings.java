package org.pailbook.lactation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.zip.GZIPInputStream;

/**
 * One milking of the open data. Read where it lies, never copied.
 *
 * @param animal number of the cow
 * @param parity as the file has it
 * @param daysInMilk day 0 is the calving day
 * @param session {@code AM} or {@code PM}
 * @param milkKg of this milking
 * @param fatPct percent by mass
 * @param proteinPct percent by mass
 * @param publishedEcmKg energy-corrected milk as its source gives it, rounded to 6 decimals
 */
public record OpenMilkings(
        String animal,
        String parity,
        int daysInMilk,
        String session,
        OptionalDouble milkKg,
        OptionalDouble fatPct,
        OptionalDouble proteinPct,
        OptionalDouble publishedEcmKg) {

    public static List<OpenMilkings> read(Path folder) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(folder.resolve("milkings-open.csv.gz"))),
                StandardCharsets.UTF_8))) {
            List<OpenMilkings> rows = new ArrayList<>();
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.split(",", -1);
                rows.add(new OpenMilkings(
                        cells[0],
                        cells[1],
                        Integer.parseInt(cells[3]),
                        cells[4],
                        number(cells[5]),
                        number(cells[6]),
                        number(cells[7]),
                        number(cells[10])));
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static OptionalDouble number(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }
}
