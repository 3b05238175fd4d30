package org.pailbook.records.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.DatedLimits;

/**
 * Everything recorded of one animal up to a day, in the library's types.
 *
 * @param identifiers in the order posted; the first is the one shown
 * @param breed as posted, if it was
 * @param history what makes her lactations
 * @param limits what her values are held against, by day
 */
public record CowRecord(
        String id,
        List<AnimalIdentifier> identifiers,
        Optional<String> name,
        Optional<String> breed,
        CowHistory history,
        DatedLimits limits) {

    /** The animal as she was on that day. */
    public CowOnDay onDay(LocalDate day) {
        return CowOnDay.of(id, history, breed.orElse(""), day, limits);
    }

    /** Whether the animal was alive on that day as far as is known: its birth is not recorded as later. */
    public boolean isBornBy(LocalDate day) {
        return history.birthDate().filter(born -> born.isAfter(day)).isEmpty();
    }

    /** The identifier by which the animal is shown. */
    public AnimalIdentifier shownIdentifier() {
        return identifiers.isEmpty() ? new AnimalIdentifier("id", id) : identifiers.get(0);
    }
}
