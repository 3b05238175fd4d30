package org.pailbook.lactation.testday;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One milking of a cow, weighed and perhaps sampled.
 *
 * @param session which milking of the day
 * @param milkKg weight, kg, 0 or more
 * @param hoursSincePrevious hours since the milking before it, if known
 * @param fatPct fat, percent by mass
 * @param proteinPct protein, percent by mass
 * @param lactosePct lactose, percent by mass
 * @param sccThousandPerMl somatic cells, 1,000 per mL
 */
public record Milking(
        Session session,
        double milkKg,
        OptionalDouble hoursSincePrevious,
        OptionalDouble fatPct,
        OptionalDouble proteinPct,
        OptionalDouble lactosePct,
        OptionalDouble sccThousandPerMl) {

    /** Which milking of the day. */
    public enum Session {
        AM,
        MIDDAY,
        PM
    }

    public Milking {
        Objects.requireNonNull(session, "session");
        Objects.requireNonNull(hoursSincePrevious, "hoursSincePrevious");
        Objects.requireNonNull(fatPct, "fatPct");
        Objects.requireNonNull(proteinPct, "proteinPct");
        Objects.requireNonNull(lactosePct, "lactosePct");
        Objects.requireNonNull(sccThousandPerMl, "sccThousandPerMl");
        if (!(milkKg >= 0 && milkKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("milkKg (" + milkKg + ") must be 0 or more and finite");
        }
        if (hoursSincePrevious.isPresent() && !(hoursSincePrevious.getAsDouble() > 0)) {
            throw new IllegalArgumentException(
                    "hoursSincePrevious (" + hoursSincePrevious.getAsDouble() + ") must be above 0");
        }
    }

    /** A weighing without a sample, hours not known. */
    public static Milking of(Session session, double milkKg) {
        OptionalDouble none = OptionalDouble.empty();
        return new Milking(session, milkKg, none, none, none, none, none);
    }

    public Milking withHoursSincePrevious(double hours) {
        return new Milking(session, milkKg, OptionalDouble.of(hours), fatPct, proteinPct, lactosePct, sccThousandPerMl);
    }

    public Milking withSample(OptionalDouble fat, OptionalDouble protein, OptionalDouble lactose, OptionalDouble scc) {
        return new Milking(session, milkKg, hoursSincePrevious, fat, protein, lactose, scc);
    }

    public Milking withFatPct(double pct) {
        return withSample(OptionalDouble.of(pct), proteinPct, lactosePct, sccThousandPerMl);
    }
}
