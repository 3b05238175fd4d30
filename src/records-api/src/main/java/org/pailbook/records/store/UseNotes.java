package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import org.jboss.logging.Logger;

/** Notes the last day on which a key or a feed was used. Whoever calls sees to it that this happens once a day, not at each request. */
@ApplicationScoped
public class UseNotes {
    private static final Logger LOG = Logger.getLogger(UseNotes.class);

    private final WriteGate gate;

    @Inject
    UseNotes(WriteGate gate) {
        this.gate = gate;
    }

    public void ofKey(String id, LocalDate day) {
        note("ApiKeyRow", id, day);
    }

    public void ofFeed(String id, LocalDate day) {
        note("FeedRow", id, day);
    }

    private void note(String entity, String id, LocalDate day) {
        try {
            gate.write(
                    session -> session.createMutationQuery("update " + entity + " set lastUsedOn = :day where id = :id")
                            .setParameter("day", day)
                            .setParameter("id", id)
                            .executeUpdate());
        } catch (RuntimeException notNoted) {
            // who only reads is not to be turned away because the disk is full
            LOG.debugf("that %s %s was used was not noted: %s", entity, id, notNoted.getMessage());
        }
    }
}
