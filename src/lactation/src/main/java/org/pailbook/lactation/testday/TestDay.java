package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One cow's weighing and sample on one date: 24 hours of milk. Absent parts were not measured; they are never zero.
 *
 * @param date the day, in the farm's zone
 * @param milkKg milk of 24 hours, kg
 * @param fatPct fat, percent by mass
 * @param proteinPct protein, percent by mass
 * @param lactosePct lactose, percent by mass
 * @param sccThousandPerMl somatic cells, 1,000 per mL
 */
public record TestDay(
        LocalDate date,
        OptionalDouble milkKg,
        OptionalDouble fatPct,
        OptionalDouble proteinPct,
        OptionalDouble lactosePct,
        OptionalDouble sccThousandPerMl) {

    public TestDay {
        Objects.requireNonNull(date, "date");
        requireFinite("milkKg", milkKg);
        requireFinite("fatPct", fatPct);
        requireFinite("proteinPct", proteinPct);
        requireFinite("lactosePct", lactosePct);
        requireFinite("sccThousandPerMl", sccThousandPerMl);
    }

    /** A weighing without a sample. */
    public static TestDay ofMilk(LocalDate date, double milkKg) {
        OptionalDouble none = OptionalDouble.empty();
        return new TestDay(date, OptionalDouble.of(milkKg), none, none, none, none);
    }

    public TestDay withFatPct(double pct) {
        return new TestDay(date, milkKg, OptionalDouble.of(pct), proteinPct, lactosePct, sccThousandPerMl);
    }

    public TestDay withProteinPct(double pct) {
        return new TestDay(date, milkKg, fatPct, OptionalDouble.of(pct), lactosePct, sccThousandPerMl);
    }

    public TestDay withLactosePct(double pct) {
        return new TestDay(date, milkKg, fatPct, proteinPct, OptionalDouble.of(pct), sccThousandPerMl);
    }

    public TestDay withSccThousandPerMl(double scc) {
        return new TestDay(date, milkKg, fatPct, proteinPct, lactosePct, OptionalDouble.of(scc));
    }

    private static void requireFinite(String name, OptionalDouble value) {
        Objects.requireNonNull(value, name);
        if (value.isPresent() && !Double.isFinite(value.getAsDouble())) {
            throw new IllegalArgumentException(
                    name + " (" + value.getAsDouble() + ") must be finite; leave it empty if not measured");
        }
    }
}
