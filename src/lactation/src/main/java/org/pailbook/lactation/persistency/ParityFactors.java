package org.pailbook.lactation.persistency;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.pailbook.lactation.method.HowKnown;

/**
 * Factors that bring a yield to that of a mature cow, by parity. None are shipped: factor tables are regional. They are learned from the
 * herd's own lactations by {@link ParityFactorLearning} or read from the user's own file.
 *
 * @param factorByParity factor by parity
 * @param pooledFromParity its factor stands for all parities above it too
 * @param source where they come from, shown with every figure
 * @param howKnown how that source came to us
 */
public record ParityFactors(
        SortedMap<Integer, Double> factorByParity, int pooledFromParity, String source, HowKnown howKnown) {

    public ParityFactors {
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(howKnown, "howKnown");
        factorByParity = Collections.unmodifiableSortedMap(new TreeMap<>(factorByParity));
        factorByParity.forEach((parity, factor) -> {
            if (parity < 1 || !(factor > 0) || factor.isInfinite()) {
                throw new IllegalArgumentException("factorByParity must hold parities from 1 and factors above 0, not "
                        + parity + " and " + factor);
            }
        });
    }

    /** The factor of a parity; empty if there is none: nothing is drawn between or below the parities given. */
    public OptionalDouble of(int parity) {
        Double factor = factorByParity.get(Math.min(parity, pooledFromParity));
        return factor == null ? OptionalDouble.empty() : OptionalDouble.of(factor);
    }

    /**
     * Reads lines of {@code parity,factor}, as in the user's own table. Empty lines, lines that begin with {@code #} and a heading are
     * passed over. The highest parity given stands for all above it.
     *
     * @param source what the user calls the table
     * @throws IllegalArgumentException naming the line that is not a parity and a factor, or is there twice
     */
    public static ParityFactors parse(List<String> lines, String source) {
        TreeMap<Integer, Double> factors = new TreeMap<>();
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#") || line.equals("parity,factor")) {
                continue;
            }
            cells.clear();
            cells.addAll(List.of(line.split(",", -1)));
            try {
                if (cells.size() != 2
                        || factors.put(
                                        Integer.valueOf(cells.get(0).strip()),
                                        Double.valueOf(cells.get(1).strip()))
                                != null) {
                    throw notAFactor(i + 1, line);
                }
            } catch (NumberFormatException e) {
                throw notAFactor(i + 1, line);
            }
        }
        return new ParityFactors(factors, factors.isEmpty() ? 1 : factors.lastKey(), source, HowKnown.TRANSCRIBED);
    }

    private static IllegalArgumentException notAFactor(int lineNumber, String line) {
        return new IllegalArgumentException(
                "line " + lineNumber + " (" + line + ") must be one parity and one factor, each parity once");
    }
}
