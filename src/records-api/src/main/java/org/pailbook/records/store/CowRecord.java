package org.pailbook.records.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.testday.TestDay;

/**
 * Everything recorded of one animal up to a day, in the library's types.
 *
 * @param identifiers in the order posted; the first is the one shown
 * @param breed as posted, if it was
 */
public record CowRecord(
        String id,
        List<AnimalIdentifier> identifiers,
        Optional<String> name,
        Optional<String> breed,
        Optional<LocalDate> birthDate,
        List<Calving> calvings,
        List<DryOff> dryOffs,
        List<Departure> departures,
        List<TestDay> testDays) {

    /** The identifier by which the animal is shown. */
    public AnimalIdentifier shownIdentifier() {
        return identifiers.isEmpty() ? new AnimalIdentifier("id", id) : identifiers.get(0);
    }
}
