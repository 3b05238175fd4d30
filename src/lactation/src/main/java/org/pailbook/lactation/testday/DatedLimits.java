package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** Which limits of values hold on which day: those shipped, until a farm sets its own from a day on. */
public final class DatedLimits {
    /** The limits shipped, on every day. */
    public static final DatedLimits PUBLISHED = new DatedLimits(Map.of());

    private final NavigableMap<LocalDate, ValueLimits> sets;

    private DatedLimits(Map<LocalDate, ValueLimits> sets) {
        this.sets = new TreeMap<>(sets);
    }

    /** @param sets by the first day of each, which holds until the day of the next */
    public static DatedLimits of(Map<LocalDate, ValueLimits> sets) {
        return sets.isEmpty() ? PUBLISHED : new DatedLimits(sets);
    }

    /** The limits for what was measured or happened on a day. */
    public ValueLimits on(LocalDate day) {
        Map.Entry<LocalDate, ValueLimits> set = sets.floorEntry(day);
        return set == null ? ValueLimits.PUBLISHED : set.getValue();
    }
}
