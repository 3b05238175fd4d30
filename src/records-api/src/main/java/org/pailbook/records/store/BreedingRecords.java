package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pailbook.lactation.breeding.BreedingHistory;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.testday.CowHistory;

/** Reads what tells of breeding: services and pregnancy checks beside what is read of cows anyway. */
@ApplicationScoped
public class BreedingRecords {
    private final CowRecords cows;

    @Inject
    BreedingRecords(CowRecords cows) {
        this.cows = cows;
    }

    /** Where each of these cows of a herd stands on a day, by her id. */
    public Map<String, BreedingRecord> ofHerd(HerdRow herd, List<CowRecord> of, LocalDate asOf) {
        Map<String, List<ServiceRow>> services = cows.events(ServiceRow.class, herd, null, asOf);
        Map<String, List<PregnancyCheckRow>> checks = cows.events(PregnancyCheckRow.class, herd, null, asOf);
        return of.stream().collect(Collectors.toMap(CowRecord::id, cow -> {
            CowHistory history = cow.history();
            BreedingHistory breeding = new BreedingHistory(
                    cow.breed().orElse(""),
                    history.calvings(),
                    CowRecords.map(services.get(cow.id()), ServiceRow::toLibrary),
                    CowRecords.map(checks.get(cow.id()), PregnancyCheckRow::toLibrary),
                    history.abortions(),
                    history.dryOffs(),
                    history.departures(),
                    Optional.empty());
            return BreedingRecord.of(cow.id(), breeding, asOf);
        }));
    }
}
