package org.pailbook.lactation.correctedmilk;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The composition at which, as its source states, a formula gives back the milk put in.
 *
 * @param fatPct fat, percent by mass
 * @param proteinPct protein, percent by mass, if the formula uses it
 * @param lactosePct lactose, percent by mass, if the formula uses it
 * @param solidsNotFatPct solids-not-fat, percent by mass, if the formula uses them
 */
public record StandardMilk(
        double fatPct, OptionalDouble proteinPct, OptionalDouble lactosePct, OptionalDouble solidsNotFatPct) {

    public StandardMilk {
        Objects.requireNonNull(proteinPct, "proteinPct");
        Objects.requireNonNull(lactosePct, "lactosePct");
        Objects.requireNonNull(solidsNotFatPct, "solidsNotFatPct");
    }

    static StandardMilk ofFat(double fatPct) {
        return new StandardMilk(fatPct, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    static StandardMilk ofFatProtein(double fatPct, double proteinPct) {
        return new StandardMilk(fatPct, OptionalDouble.of(proteinPct), OptionalDouble.empty(), OptionalDouble.empty());
    }

    StandardMilk withLactosePct(double pct) {
        return new StandardMilk(fatPct, proteinPct, OptionalDouble.of(pct), solidsNotFatPct);
    }

    StandardMilk withSolidsNotFatPct(double pct) {
        return new StandardMilk(fatPct, proteinPct, lactosePct, OptionalDouble.of(pct));
    }
}
