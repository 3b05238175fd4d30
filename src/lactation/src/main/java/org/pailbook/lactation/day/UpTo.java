package org.pailbook.lactation.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Events as they stood on a day, by their own days. */
public final class UpTo {
    private UpTo() {}

    /**
     * Events up to a day, in their order; the list itself if none is later, which is nearly always so.
     *
     * @param events a list that cannot change
     */
    public static <E> List<E> day(LocalDate day, List<E> events, Function<E, LocalDate> date) {
        for (E event : events) {
            if (date.apply(event).isAfter(day)) {
                return withoutLater(day, events, date);
            }
        }
        return events;
    }

    private static <E> List<E> withoutLater(LocalDate day, List<E> events, Function<E, LocalDate> date) {
        List<E> known = new ArrayList<>(events.size());
        for (E event : events) {
            if (!date.apply(event).isAfter(day)) {
                known.add(event);
            }
        }
        return List.copyOf(known);
    }
}
