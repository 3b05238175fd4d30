package org.pailbook.lactation.udderhealth;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Limits that were read somewhere, to choose from. None is a default: rules change, and buyers have their own. */
public final class TankLimits {
    private static final String FILE = "tank-limits.csv";
    private static final int COLUMNS = 8;
    private static final List<TankLimit> ALL = read();

    private TankLimits() {}

    public static List<TankLimit> all() {
        return ALL;
    }

    public static Optional<TankLimit> byId(String id) {
        return ALL.stream().filter(limit -> limit.id().equals(id)).findFirst();
    }

    private static List<TankLimit> read() {
        try (InputStream file = TankLimits.class.getResourceAsStream(FILE);
                BufferedReader lines = new BufferedReader(new InputStreamReader(file, StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("id;"))
                    .map(TankLimits::limit)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static TankLimit limit(String line) {
        String[] cells = line.split(";", -1);
        if (cells.length != COLUMNS) {
            throw new IllegalStateException(FILE + ": " + COLUMNS + " columns expected: " + line);
        }
        return new TankLimit(
                cells[0],
                cells[1],
                Double.parseDouble(cells[2]),
                TankLimit.Rule.valueOf(cells[3]),
                Integer.parseInt(cells[4]),
                Integer.parseInt(cells[5]),
                cells[6].isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(cells[6])),
                cells[7]);
    }
}
