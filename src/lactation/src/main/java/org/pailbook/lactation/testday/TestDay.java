package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.pailbook.lactation.finding.Finding;

/**
 * One cow's weighing and sample on one date: 24 hours of milk. Absent parts were not measured; they are never zero.
 *
 * @param date the day, in the farm's zone
 * @param milkKg milk of 24 hours, kg
 * @param fatPct fat, percent by mass
 * @param proteinPct protein, percent by mass
 * @param lactosePct lactose, percent by mass
 * @param sccThousandPerMl somatic cells, 1,000 per mL
 * @param addedVarianceShare how much more this test varies than a day weighed whole, see {@link AddedTestVariance}; 0 for an ordinary one
 * @param notes what is to be said with every figure that uses this test: where it is from, what is odd about it
 */
public record TestDay(
        LocalDate date,
        OptionalDouble milkKg,
        OptionalDouble fatPct,
        OptionalDouble proteinPct,
        OptionalDouble lactosePct,
        OptionalDouble sccThousandPerMl,
        double addedVarianceShare,
        List<Finding> notes) {

    public TestDay {
        Objects.requireNonNull(date, "date");
        requireFinite("milkKg", milkKg);
        requireFinite("fatPct", fatPct);
        requireFinite("proteinPct", proteinPct);
        requireFinite("lactosePct", lactosePct);
        requireFinite("sccThousandPerMl", sccThousandPerMl);
        if (!(addedVarianceShare >= 0 && addedVarianceShare < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "addedVarianceShare (" + addedVarianceShare + ") must be 0 or more and finite");
        }
        notes = List.copyOf(notes);
    }

    /** A test of a day weighed whole, with nothing to be said about it. */
    public TestDay(
            LocalDate date,
            OptionalDouble milkKg,
            OptionalDouble fatPct,
            OptionalDouble proteinPct,
            OptionalDouble lactosePct,
            OptionalDouble sccThousandPerMl) {
        this(date, milkKg, fatPct, proteinPct, lactosePct, sccThousandPerMl, 0, List.of());
    }

    /** A weighing without a sample. */
    public static TestDay ofMilk(LocalDate date, double milkKg) {
        OptionalDouble none = OptionalDouble.empty();
        return new TestDay(date, OptionalDouble.of(milkKg), none, none, none, none);
    }

    public TestDay withMilkKg(double kg) {
        return with(OptionalDouble.of(kg), fatPct, proteinPct, lactosePct, sccThousandPerMl);
    }

    public TestDay withFatPct(double pct) {
        return with(milkKg, OptionalDouble.of(pct), proteinPct, lactosePct, sccThousandPerMl);
    }

    public TestDay withProteinPct(double pct) {
        return with(milkKg, fatPct, OptionalDouble.of(pct), lactosePct, sccThousandPerMl);
    }

    public TestDay withLactosePct(double pct) {
        return with(milkKg, fatPct, proteinPct, OptionalDouble.of(pct), sccThousandPerMl);
    }

    public TestDay withSccThousandPerMl(double scc) {
        return with(milkKg, fatPct, proteinPct, lactosePct, OptionalDouble.of(scc));
    }

    public TestDay withAddedVarianceShare(double share) {
        return new TestDay(date, milkKg, fatPct, proteinPct, lactosePct, sccThousandPerMl, share, notes);
    }

    /** The same with more to be said about it. */
    public TestDay withNotes(List<Finding> more) {
        if (more.isEmpty()) {
            return this;
        }
        List<Finding> all = new ArrayList<>(notes);
        all.addAll(more);
        return new TestDay(date, milkKg, fatPct, proteinPct, lactosePct, sccThousandPerMl, addedVarianceShare, all);
    }

    /** The same, all that is said about it naming this record. */
    public TestDay withRecord(String id) {
        return new TestDay(
                date,
                milkKg,
                fatPct,
                proteinPct,
                lactosePct,
                sccThousandPerMl,
                addedVarianceShare,
                notes.stream().map(note -> note.withRecord(id)).toList());
    }

    private TestDay with(
            OptionalDouble milk,
            OptionalDouble fat,
            OptionalDouble protein,
            OptionalDouble lactose,
            OptionalDouble scc) {
        return new TestDay(date, milk, fat, protein, lactose, scc, addedVarianceShare, notes);
    }

    private static void requireFinite(String name, OptionalDouble value) {
        Objects.requireNonNull(value, name);
        if (value.isPresent() && !Double.isFinite(value.getAsDouble())) {
            throw new IllegalArgumentException(
                    name + " (" + value.getAsDouble() + ") must be finite; leave it empty if not measured");
        }
    }
}
