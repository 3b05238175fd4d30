package org.pailbook.records.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.ChangeTurn;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.WriteGate;
import org.pailbook.records.wire.FindingView;

/**
 * Takes rows of one kind into one herd: all of a call in one transaction, under the herd's lock.
 *
 * <p>Under that lock the stored records are looked up first and written after, so that two requests with the same row give one
 * record and one {@code unchanged}.
 */
@ApplicationScoped
public class RecordIntake {
    private final WriteGate gate;
    private final Clock clock;
    private final PostLines lines = new PostLines();

    @Inject
    RecordIntake(WriteGate gate, Clock clock) {
        this.gate = gate;
        this.clock = clock;
    }

    /** Reads rows; nothing is looked up yet, so no lock is held. */
    public <E extends StoredRecord> List<Posted<E>> read(RecordKind<E> kind, HerdRow herd, List<PostedRow> rows) {
        ZoneId zone = herd.zone();
        return rows.stream().map(row -> kind.read(row, zone)).toList();
    }

    /**
     * Checks and stores rows that were read.
     *
     * @param writtenBy id of the caller's key
     * @param mode whether anything is stored when some or all rows are in error
     * @param memory what the request has read before
     * @return one outcome for each row, in the order posted
     */
    public <E extends StoredRecord> List<RowOutcome<E>> take(
            RecordKind<E> kind,
            HerdRow herd,
            String writtenBy,
            List<Posted<E>> posted,
            IntakeMode mode,
            HerdMemory memory) {
        if (posted.stream().allMatch(Posted::isRefused)) {
            return posted.stream()
                    .map(row -> RowOutcome.of(row, Outcome.REFUSED, (E) null))
                    .toList();
        }
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, herd.id, clock.instant());
            Settlement<E> settlement = settle(session, kind, herd, turn, posted, null, memory);
            boolean rejected = mode == IntakeMode.ALL_OR_NOTHING
                    && settlement.outcomes().stream().anyMatch(row -> row.outcome() == Outcome.REFUSED);
            boolean stored = mode != IntakeMode.DRY_RUN && !rejected;
            memory.taken(kind, stored ? settlement.write(session, herd, writtenBy, turn) : turn.lastChange());
            return settlement.outcomes();
        });
    }

    /** Rows of several requests: the good ones are stored, or none and empty if a row has to do with another one. */
    private <E extends StoredRecord> Optional<List<RowOutcome<E>>> takeSeparate(
            RecordKind<E> kind, HerdRow herd, String writtenBy, List<Posted<E>> posted) {
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, herd.id, clock.instant());
            Settlement<E> settlement = settle(session, kind, herd, turn, posted, null, new HerdMemory());
            if (settlement.isEntangled()) {
                return Optional.empty();
            }
            settlement.write(session, herd, writtenBy, turn);
            return Optional.of(settlement.outcomes());
        });
    }

    /**
     * Checks the rows and decides what each does, under the herd's lock; nothing is written yet.
     *
     * @param known the record the only row is to replace; null if its keys tell
     */
    static <E extends StoredRecord> Settlement<E> settle(
            StatelessSession session,
            RecordKind<E> kind,
            HerdRow herd,
            ChangeTurn turn,
            List<Posted<E>> posted,
            E known,
            HerdMemory memory) {
        memory.recall(turn, LocalDate.ofInstant(turn.at(), herd.zone()));
        if (kind.namesAnimal()) {
            findAnimals(session, kind, herd, posted, memory);
        }
        List<Posted<E>> readable =
                posted.stream().filter(row -> !row.isRefused()).toList();
        StoredBefore<E> before = StoredBefore.load(session, kind, herd, readable);
        Surroundings surroundings = memory.around(session, kind, herd, animalIds(readable));
        Settlement<E> settlement = new Settlement<>(kind, before);
        LimitsOnDemand limits = new LimitsOnDemand(session, herd);
        for (Posted<E> row : posted) {
            E replaced = known;
            if (!row.isRefused()) {
                row.heldAgainst(limits);
                if (known == null) {
                    replaced = before.of(row).stream().findFirst().orElse(null);
                }
                kind.check(row, replaced, surroundings);
            }
            if (known == null) {
                settlement.settle(row);
            } else {
                settlement.settleFor(row, known);
            }
            if (!row.isRefused()) {
                kind.noteTaken(row.record, replaced, surroundings);
            }
        }
        return settlement;
    }

    private static <E extends StoredRecord> void findAnimals(
            StatelessSession session, RecordKind<E> kind, HerdRow herd, List<Posted<E>> posted, HerdMemory memory) {
        List<AnimalReference> named = posted.stream()
                .filter(row -> !row.isRefused())
                .map(row -> row.animal)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        Map<AnimalReference, String> ids = memory.idsOf(session, herd, named);
        for (Posted<E> row : posted) {
            if (row.animal == null || row.isRefused()) {
                continue;
            }
            String id = ids.get(row.animal);
            if (id == null) {
                row.add(FindingView.error(
                                "unknown-animal",
                                row.pointer("animal"),
                                "is not known in this herd; post the animal first")
                        .seen(row.animal.shown()));
            } else {
                kind.assignAnimal(row.record, id);
            }
        }
    }

    private static <E extends StoredRecord> TreeSet<String> animalIds(List<Posted<E>> rows) {
        return rows.stream()
                .map(row -> row.record)
                .filter(AnimalEvent.class::isInstance)
                .map(record -> ((AnimalEvent) record).animalId)
                .filter(Objects::nonNull)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /**
     * The same for a row that must not replace anything: somebody who saw no record does not overwrite one that was written since.
     *
     * @return empty if a record in force with another content has its keys; nothing is stored then
     */
    public <E extends StoredRecord> Optional<RowOutcome<E>> takeNew(
            RecordKind<E> kind, HerdRow herd, String writtenBy, PostedRow row) {
        Posted<E> posted = kind.read(row, herd.zone());
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, herd.id, clock.instant());
            Settlement<E> settlement = settle(session, kind, herd, turn, List.of(posted), null, new HerdMemory());
            RowOutcome<E> outcome = settlement.outcomes().get(0);
            if (outcome.outcome() == Outcome.UPDATED && !outcome.isRevived()) {
                return Optional.empty();
            }
            settlement.write(session, herd, writtenBy, turn);
            return Optional.of(outcome);
        });
    }

    /** The outcome of the only row of a request; stored together with rows of other requests that wait at the same time. */
    public <E extends StoredRecord> RowOutcome<E> takeOne(
            RecordKind<E> kind, HerdRow herd, String writtenBy, PostedRow row) {
        Posted<E> posted = kind.read(row, herd.zone());
        if (posted.isRefused()) {
            return RowOutcome.of(posted, Outcome.REFUSED, null);
        }
        if (!kind.namesAnimal()) {
            return takeAlone(kind, herd, writtenBy, row);
        }
        return lines.take(
                new PostLines.Place(kind.name(), herd.id, writtenBy),
                row,
                rows -> rows.size() == 1
                        ? Optional.of(List.of(takeAlone(kind, herd, writtenBy, rows.get(0))))
                        : takeSeparate(kind, herd, writtenBy, read(kind, herd, rows)));
    }

    private <E extends StoredRecord> RowOutcome<E> takeAlone(
            RecordKind<E> kind, HerdRow herd, String writtenBy, PostedRow row) {
        List<Posted<E>> posted = read(kind, herd, List.of(row));
        return take(kind, herd, writtenBy, posted, IntakeMode.STORE_GOOD_ROWS, new HerdMemory())
                .get(0);
    }
}
