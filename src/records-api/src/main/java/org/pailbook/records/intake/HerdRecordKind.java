package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InParts;

/** A kind of record about the herd as a whole, its tank or its prices; no animal is named. */
public abstract class HerdRecordKind<E extends DatedRecord> extends DatedKind<E> {
    /** Natural key. */
    private record DayAndMore(LocalDate date, Object besides) {}

    /** Checks what is particular to the kind; the day is known to be there and not in the future. */
    protected abstract void checkDetails(Posted<E> posted, E replaced);

    @Override
    protected List<Column> firstColumns() {
        return List.of();
    }

    @Override
    protected void writeFirst(E record, ObjectNode content) {}

    @Override
    protected final boolean namesAnimal() {
        return false;
    }

    @Override
    protected final void assignAnimal(E record, String animalId) {
        throw new UnsupportedOperationException(name() + " name no animal");
    }

    @Override
    protected final List<?> naturalKeys(E record) {
        return record.date == null ? List.of() : List.of(new DayAndMore(record.date, keyBesides(record)));
    }

    @Override
    protected final List<E> findByNaturalKeys(StatelessSession session, HerdRow herd, List<E> posted) {
        return session.createSelectionQuery(
                        "from " + entity().getSimpleName() + " where herdId = :herd and date in :dates", entity())
                .setParameter("herd", herd.id)
                .setParameter(
                        "dates",
                        InParts.oneOrAll(posted.stream()
                                .map(record -> record.date)
                                .distinct()
                                .toList()))
                .getResultList();
    }

    @Override
    protected final void check(Posted<E> posted, E replaced, Surroundings surroundings) {
        checkDay(posted, surroundings);
        checkDetails(posted, replaced);
    }
}
