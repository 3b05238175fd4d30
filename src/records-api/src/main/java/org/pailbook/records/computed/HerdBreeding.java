package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingHistory;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.event.BreedingDecision;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.records.store.BreedingDecisionRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.store.ServiceRow;

/** Breeding records of a herd's animals from what is recorded of them. */
@ApplicationScoped
public class HerdBreeding {
    /** Age of an embryo that is put in; common practice. Her pregnancy counts from the heat it belongs to. */
    private static final int EMBRYO_AGE_DAYS = 7;

    private final CowRecords records;
    private final Events events;

    @Inject
    HerdBreeding(CowRecords records, Events events) {
        this.records = records;
        this.events = events;
    }

    /** An animal with her breeding record. */
    public record BredCow(CowRecord record, BreedingRecord breeding) {}

    /** All animals of a herd born by a day, also those that left. */
    public List<BredCow> of(HerdRow herd, LocalDate asOf) {
        return of(herd, records.ofHerd(herd, asOf), asOf);
    }

    /** The same of animals that have been read already. */
    public List<BredCow> of(HerdRow herd, List<CowRecord> read, LocalDate asOf) {
        List<CowRecord> animals =
                read.stream().filter(record -> record.isBornBy(asOf)).toList();
        List<BreedingHistory> histories = histories(herd, animals, asOf);
        List<BredCow> cows = new ArrayList<>();
        for (int i = 0; i < animals.size(); i++) {
            cows.add(
                    new BredCow(animals.get(i), BreedingRecord.of(animals.get(i).id(), histories.get(i), asOf)));
        }
        return cows;
    }

    /** What is recorded of these animals' breeding up to a day, in their order. */
    public List<BreedingHistory> histories(HerdRow herd, List<CowRecord> animals, LocalDate asOf) {
        Map<String, List<ServiceRow>> services = events.byAnimal(ServiceRow.class, herd, asOf);
        Map<String, List<PregnancyCheckRow>> checks = events.byAnimal(PregnancyCheckRow.class, herd, asOf);
        Map<String, List<BreedingDecisionRow>> decisions = events.byAnimal(BreedingDecisionRow.class, herd, asOf);
        return animals.parallelStream()
                .map(record -> history(
                        record,
                        services.getOrDefault(record.id(), List.of()),
                        checks.getOrDefault(record.id(), List.of()),
                        decisions.getOrDefault(record.id(), List.of())))
                .toList();
    }

    /** One animal. */
    public BreedingRecord of(HerdRow herd, CowRecord animal, LocalDate asOf) {
        return BreedingRecord.of(
                animal.id(),
                history(
                        animal,
                        events.allOf(animal.id(), ServiceRow.class, herd, null, asOf),
                        events.allOf(animal.id(), PregnancyCheckRow.class, herd, null, asOf),
                        events.allOf(animal.id(), BreedingDecisionRow.class, herd, null, asOf)),
                asOf);
    }

    private static BreedingHistory history(
            CowRecord record,
            List<ServiceRow> services,
            List<PregnancyCheckRow> checks,
            List<BreedingDecisionRow> decisions) {
        return new BreedingHistory(
                record.breed().orElse(""),
                record.history().calvings(),
                services.stream().map(HerdBreeding::service).toList(),
                checks.stream().map(HerdBreeding::check).toList(),
                record.history().abortions(),
                record.history().dryOffs(),
                record.history().departures(),
                decisions.stream().map(HerdBreeding::decision).toList());
    }

    private static Insemination service(ServiceRow row) {
        boolean embryo = "implantation".equals(row.method);
        return Insemination.on(embryo ? row.date.minusDays(EMBRYO_AGE_DAYS) : row.date);
    }

    private static BreedingDecision decision(BreedingDecisionRow row) {
        return new BreedingDecision(
                row.date,
                "breedAgain".equals(row.decision),
                Optional.ofNullable(row.reason).orElse(""));
    }

    private static PregnancyCheck check(PregnancyCheckRow row) {
        PregnancyCheck.Result result = switch (row.result) {
            case "pregnant", "multiple" -> PregnancyCheck.Result.PREGNANT;
            case "empty" -> PregnancyCheck.Result.OPEN;
            default -> PregnancyCheck.Result.DOUBTFUL;
        };
        return PregnancyCheck.of(row.date, result);
    }
}
