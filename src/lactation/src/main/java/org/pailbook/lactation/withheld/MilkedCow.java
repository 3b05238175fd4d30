package org.pailbook.lactation.withheld;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.Treatment;

/**
 * What is on record of a cow's milk, in any order; a record sent twice changes nothing.
 *
 * @param animal tells her from the others
 * @param lastCalving her last calving up to the moment asked for, if there is one
 */
public record MilkedCow(
        String animal,
        Optional<LocalDate> lastCalving,
        List<Treatment> treatments,
        List<ForemilkCheck> foremilkChecks) {
    public MilkedCow {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(lastCalving, "lastCalving");
        treatments = List.copyOf(treatments);
        foremilkChecks = List.copyOf(foremilkChecks);
    }
}
