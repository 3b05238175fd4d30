package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * How cows of each parity left a herd unplanned, over the months they were there: what a herd's own records tell of that risk.
 *
 * <p>Which exits were unplanned is for the caller to say; recorded reasons do not part them well (Fetrow et al. 2006, J. Dairy Sci.
 * 89:1896-1905, abstract, read). Parities after the fifth are as the fifth.
 */
public final class ExitExperience {
    /** The months after calving in which cows leave more often. */
    private static final int FRESH_MONTHS = 2;

    private final int[] exits = new int[StageGrid.PARITIES];
    private final double[] freshMonths = new double[StageGrid.PARITIES];
    private final double[] laterMonths = new double[StageGrid.PARITIES];

    /**
     * A cow from a calving to the next, or to her exit, or on.
     *
     * @param parity 1 or more
     * @param calving first day
     * @param end first day she was not there in this parity; the day after the last looked at if she still is
     * @param leftUnplanned whether an unplanned exit ended it
     */
    public record Stretch(int parity, LocalDate calving, LocalDate end, boolean leftUnplanned) {
        public Stretch {
            Objects.requireNonNull(calving, "calving");
            Objects.requireNonNull(end, "end");
            if (parity < 1) {
                throw new IllegalArgumentException("parity (" + parity + ") must be at least 1");
            }
        }
    }

    private ExitExperience() {}

    /**
     * @param from first day looked at
     * @param asOf last day looked at
     */
    public static ExitExperience of(List<Stretch> stretches, LocalDate from, LocalDate asOf) {
        ExitExperience all = new ExitExperience();
        LocalDate after = asOf.plusDays(1);
        long freshDays = Math.round(FRESH_MONTHS * StageGrid.DAYS_PER_MONTH);
        for (Stretch one : stretches) {
            int group = Math.min(one.parity(), StageGrid.PARITIES) - 1;
            LocalDate start = one.calving().isAfter(from) ? one.calving() : from;
            LocalDate end = one.end().isBefore(after) ? one.end() : after;
            LocalDate fresh = one.calving().plusDays(freshDays);
            LocalDate freshEnd = fresh.isBefore(end) ? fresh : end;
            all.freshMonths[group] += months(start, freshEnd);
            all.laterMonths[group] += months(fresh.isAfter(start) ? fresh : start, end);
            // a cow that left has her exit on the day she is not there any more
            if (one.leftUnplanned() && !one.end().isBefore(from) && !one.end().isAfter(asOf)) {
                all.exits[group]++;
            }
        }
        return all;
    }

    private static double months(LocalDate from, LocalDate end) {
        return Math.max(0, ChronoUnit.DAYS.between(from, end)) / StageGrid.DAYS_PER_MONTH;
    }

    /** Unplanned exits of cows of that parity. */
    public int exits(int parity) {
        return exits[parity - 1];
    }

    /** Months cows of that parity were there, dry months among them. */
    public double cowMonths(int parity) {
        return freshMonths[parity - 1] + laterMonths[parity - 1];
    }

    /** Both together: pregnancies as given, exits and cow-months from here. One for each parity, 1 to 5. */
    public List<HerdExperience> with(List<HerdExperience> pregnancies) {
        List<HerdExperience> both = new ArrayList<>();
        for (int i = 0; i < StageGrid.PARITIES; i++) {
            HerdExperience other = pregnancies.get(i);
            both.add(new HerdExperience(
                    exits[i],
                    freshMonths[i],
                    laterMonths[i],
                    other.pregnancies(),
                    other.eligibleCycles(),
                    other.milk(),
                    other.testDays()));
        }
        return both;
    }
}
