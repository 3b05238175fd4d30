package org.pailbook.records.exchange;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Units in which others measure what we keep in kg, percent or thousand cells per mL. The one place where a number comes from one into the other;
 * which unit it is, somebody said: it is never guessed.
 */
public enum FileUnit {
    KG("1", 0),
    /** International avoirdupois pound, exactly (agreement of 1959; from memory). */
    LB("0.45359237", 3),
    /** At 1.03 kg, the usual density of whole milk at about 20 degrees; common practice, no source. */
    LITRE("1.03", 3),
    THOUSAND_PER_ML("1", 0),
    PER_ML("0.001", 3);

    private final BigDecimal factor;
    private final int decimals;

    /** @param decimals kept of what was converted: grams, single cells */
    FileUnit(String factor, int decimals) {
        this.factor = new BigDecimal(factor);
        this.decimals = decimals;
    }

    public static Optional<FileUnit> of(String wireName) {
        return Arrays.stream(values())
                .filter(unit -> unit.wireName().equals(wireName))
                .findFirst();
    }

    /** Those a column may be in; empty if there is nothing to ask. */
    public static List<FileUnit> ofColumn(String name) {
        if (name.equals("milk_kg")) {
            return List.of(KG, LB, LITRE);
        }
        return name.equals("scc_thousand_per_ml") ? List.of(THOUSAND_PER_ML, PER_ML) : List.of();
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether it is the unit we keep. */
    public boolean isOurs() {
        return decimals == 0;
    }

    /** How much of our unit one of it is. */
    public double factor() {
        return factor.doubleValue();
    }

    /** The number in our unit. */
    public BigDecimal converted(BigDecimal number) {
        return isOurs()
                ? number
                : number.multiply(factor, MathContext.DECIMAL64).setScale(decimals, RoundingMode.HALF_EVEN);
    }
}
