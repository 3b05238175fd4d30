package org.pailbook.records.store;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.hibernate.StatelessSession;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * Every write goes through here: one transaction of its own, committed when the call returns.
 *
 * <p>SQLite has one writer at a time and its own waiting is not fair; a fair lock taken before the transaction begins cuts the
 * slowest writes to a tenth. PostgreSQL needs no such lock.
 */
@ApplicationScoped
public class WriteGate {
    private static final long LONGEST_WAIT_SECONDS = 30;
    private static final int JDBC_BATCH = 500;

    private final StatelessSession session;
    private final boolean oneWriter;
    private final ReentrantLock turn = new ReentrantLock(true);

    @Inject
    WriteGate(StatelessSession session, @ConfigProperty(name = "quarkus.datasource.db-kind") String databaseKind) {
        this.session = session;
        this.oneWriter = databaseKind.equals("sqlite");
    }

    /** Does the work in a transaction; what it throws rolls everything back. */
    public <T> T write(Function<StatelessSession, T> work) {
        if (!oneWriter) {
            return inTransaction(work);
        }
        awaitTurn();
        try {
            return inTransaction(work);
        } finally {
            turn.unlock();
        }
    }

    /**
     * Takes the herd's lock for the rest of the transaction and tells the number of its last change. Changes of one herd
     * are thereby numbered without gaps and become visible in that order, each transaction at a later instant than the one before.
     */
    public static ChangeTurn lockForChange(StatelessSession session, String herdId, Instant now) {
        session.createMutationQuery("update HerdRow set changeSeq = changeSeq where id = :id")
                .setParameter("id", herdId)
                .executeUpdate();
        long lastChange = session.createSelectionQuery("select changeSeq from HerdRow where id = :id", Long.class)
                .setParameter("id", herdId)
                .getSingleResult();
        Instant at = now.truncatedTo(ChronoUnit.MILLIS);
        Instant before = session.createSelectionQuery(
                        "select recordedAt from HerdChangeRow where herdId = :id and changeSeq = :seq", Instant.class)
                .setParameter("id", herdId)
                .setParameter("seq", lastChange)
                .getSingleResultOrNull();
        return new ChangeTurn(lastChange, before == null || at.isAfter(before) ? at : before.plusMillis(1));
    }

    /** Keeps the number of the last change made in that turn. */
    public static void noteLastChange(StatelessSession session, String herdId, long changeSeq, Instant at) {
        session.createMutationQuery("update HerdRow set changeSeq = :seq where id = :id")
                .setParameter("seq", changeSeq)
                .setParameter("id", herdId)
                .executeUpdate();
        HerdChangeRow change = new HerdChangeRow();
        change.herdId = herdId;
        change.changeSeq = changeSeq;
        change.recordedAt = at;
        session.insert(change);
    }

    private <T> T inTransaction(Function<StatelessSession, T> work) {
        return QuarkusTransaction.requiringNew().call(() -> {
            session.setJdbcBatchSize(JDBC_BATCH);
            return work.apply(session);
        });
    }

    private void awaitTurn() {
        try {
            if (turn.tryLock(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        throw new Problem(ProblemCode.BUSY, "Other writes took too long; try again.").withHeader("Retry-After", "2");
    }
}
