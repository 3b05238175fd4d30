package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What was chosen for typing weigh days. */
@ApplicationScoped
public class EntryChoices implements PanacheRepositoryBase<EntryChoiceRow, String> {
    private final WriteGate gate;

    @Inject
    EntryChoices(WriteGate gate) {
        this.gate = gate;
    }

    public Optional<EntryChoiceRow> of(HerdRow herd, String keyId) {
        return find("herdId = ?1 and keyId = ?2", herd.id, keyId).firstResultOptional();
    }

    /**
     * Changes what a key chose for a herd.
     *
     * @param usual what holds for who has chosen nothing yet
     */
    public void change(HerdRow herd, String keyId, EntryChoiceRow usual, Consumer<EntryChoiceRow> change) {
        gate.write(session -> {
            // the herd's lock: two requests of one key make one row
            session.createMutationQuery("update HerdRow set changeSeq = changeSeq where id = :id")
                    .setParameter("id", herd.id)
                    .executeUpdate();
            List<EntryChoiceRow> kept = session.createSelectionQuery(
                            "from EntryChoiceRow where herdId = :herd and keyId = :key", EntryChoiceRow.class)
                    .setParameter("herd", herd.id)
                    .setParameter("key", keyId)
                    .getResultList();
            EntryChoiceRow row = kept.isEmpty() ? usual : kept.get(0);
            change.accept(row);
            if (kept.isEmpty()) {
                row.id = RecordIds.next();
                row.herdId = herd.id;
                row.keyId = keyId;
                session.insert(row);
            } else {
                session.update(row);
            }
            return null;
        });
    }
}
