package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * The last milking day of a cow that is known to be dry or gone, when nobody wrote it down: half the last test interval after the last
 * test, at most {@value #MOST_DAYS_AFTER_LAST_TEST} days.
 *
 * <p>ICAR's worked test interval example credits 14 days after the last test, half of the 28 days before it; the limit is ours. With one
 * test only, the interval before it is the one since calving. A cow still in milk has no end, estimated or not.
 */
public final class EstimatedEnd implements PublishedMethod {
    public static final EstimatedEnd HALF_THE_LAST_INTERVAL = new EstimatedEnd();

    /** Days; half of a monthly interval. Ours. */
    static final int MOST_DAYS_AFTER_LAST_TEST = 15;

    private EstimatedEnd() {}

    /** The estimated last milking day; empty if there is no test after the calving day to estimate it from. */
    public Optional<LocalDate> of(Lactation lactation) {
        LocalDate previous = lactation.calvingDate();
        LocalDate last = null;
        for (TestDay test : lactation.testDays()) {
            if (test.date().isAfter(lactation.calvingDate()) && !test.date().equals(last)) {
                previous = last == null ? lactation.calvingDate() : last;
                last = test.date();
            }
        }
        if (last == null) {
            return Optional.empty();
        }
        long half = ChronoUnit.DAYS.between(previous, last) / 2;
        return Optional.of(last.plusDays(Math.min(half, MOST_DAYS_AFTER_LAST_TEST)));
    }

    @Override
    public String id() {
        return "estimated-end-half-interval";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Pailbook",
                2026,
                "half the last interval as in ICAR's test interval example (from memory), at most 15 days",
                HowKnown.OURS);
    }
}
