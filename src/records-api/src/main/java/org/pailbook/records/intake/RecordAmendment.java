package org.pailbook.records.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.function.IntPredicate;
import org.hibernate.StatelessSession;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalIdentifierRow;
import org.pailbook.records.store.ChangeTurn;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.WriteGate;

/**
 * Changes or withdraws one record known by its id, if it still has the version the caller saw.
 *
 * <p>Version, content and the records around are read and the new version is written under the herd's lock, in one transaction: of two
 * callers who saw the same version, one is refused.
 */
@ApplicationScoped
public class RecordAmendment {
    private final WriteGate gate;
    private final Clock clock;

    @Inject
    RecordAmendment(WriteGate gate, Clock clock) {
        this.gate = gate;
        this.clock = clock;
    }

    /**
     * Puts another content in the place of a record's, with the same checks as for a posted one.
     *
     * @param expected whether the version in force is the one the caller means
     * @throws Problem if there is no such record in force, or it has another version
     */
    public <E extends StoredRecord> RowOutcome<E> change(
            RecordKind<E> kind, HerdRow herd, String writtenBy, String id, IntPredicate expected, Edit edit) {
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, herd.id, clock.instant());
            E known = known(session, kind, herd, id, expected);
            PostedRow row = PostedRow.single(edit.change().apply(kind.wire(known, animal -> shown(session, animal))));
            List<Posted<E>> posted =
                    List.of(kind.read(row, herd.zone(), edit.cleared()).asWhole());
            Settlement<E> settlement = RecordIntake.settle(session, kind, herd, turn, posted, known, new HerdMemory());
            settlement.write(session, herd, writtenBy, turn);
            return settlement.outcomes().get(0);
        });
    }

    /**
     * Takes a record out of force; its history stays, and posting its key again revives it.
     *
     * @return the record with its new version
     * @throws Problem if there is no such record in force, or it has another version
     */
    public <E extends StoredRecord> E withdraw(
            RecordKind<E> kind, HerdRow herd, String writtenBy, String id, IntPredicate expected) {
        return gate.write(session -> {
            ChangeTurn turn = WriteGate.lockForChange(session, herd.id, clock.instant());
            E record = known(session, kind, herd, id, expected);
            session.insert(Settlement.asReplaced(kind, record));
            record.withdrawn = true;
            record.version++;
            record.changeSeq = turn.lastChange() + 1;
            record.recordedAt = turn.at();
            record.recordedBy = writtenBy;
            session.update(record);
            WriteGate.noteLastChange(session, herd.id, record.changeSeq, turn.at());
            return record;
        });
    }

    private static <E extends StoredRecord> E known(
            StatelessSession session, RecordKind<E> kind, HerdRow herd, String id, IntPredicate expected) {
        List<E> found = session.createSelectionQuery(
                        "from " + kind.entity().getSimpleName()
                                + " where herdId = :herd and id = :id and withdrawn = false",
                        kind.entity())
                .setParameter("herd", herd.id)
                .setParameter("id", id)
                .getResultList();
        if (found.isEmpty()) {
            throw Problem.notFound();
        }
        requireExpected(found.get(0).version, expected);
        kind.complete(session, found);
        return found.get(0);
    }

    /** @throws Problem {@code version-mismatch} with the version in force, if it is not the one meant */
    public static void requireExpected(int version, IntPredicate expected) {
        if (!expected.test(version)) {
            throw new Problem(
                            ProblemCode.VERSION_MISMATCH,
                            "The record has version " + version + "; fetch it, and send the change with its ETag.")
                    .withHeader("ETag", "\"" + version + "\"");
        }
    }

    private static AnimalIdentifier shown(StatelessSession session, String animalId) {
        return session
                .createSelectionQuery(
                        "from AnimalIdentifierRow where animalId = :id order by placeNo", AnimalIdentifierRow.class)
                .setParameter("id", animalId)
                .setMaxResults(1)
                .getResultList()
                .stream()
                .map(row -> new AnimalIdentifier(row.scheme, row.identifier))
                .findFirst()
                .orElse(null);
    }
}
