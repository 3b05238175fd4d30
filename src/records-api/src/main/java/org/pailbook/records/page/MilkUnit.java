package org.pailbook.records.page;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** In which unit weights are shown; everything else of the service is in kg. */
enum MilkUnit {
    KG(1),
    /** International avoirdupois pound, exactly (agreement of 1959; from memory). */
    LB(0.45359237);

    private final double kg;

    MilkUnit(double kg) {
        this.kg = kg;
    }

    static Optional<MilkUnit> of(String wireName) {
        return Arrays.stream(values())
                .filter(unit -> unit.wireName().equals(wireName))
                .findFirst();
    }

    String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }

    double of(double amountKg) {
        return amountKg / kg;
    }
}
