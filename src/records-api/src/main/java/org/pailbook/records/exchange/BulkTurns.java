package org.pailbook.records.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.concurrent.Semaphore;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/** How many bodies of many records are taken at the same time; one more is sent away rather than left waiting. */
@ApplicationScoped
class BulkTurns {
    private static final String RETRY_SECONDS = "5";

    private final Semaphore free;

    @Inject
    BulkTurns(@ConfigProperty(name = "pailbook.bulks.at.once") int atOnce) {
        // none at all would be a service that takes no tables; 0 means no limit, as in every setting of this kind
        this.free = new Semaphore(atOnce == 0 ? Integer.MAX_VALUE : atOnce);
    }

    /** A turn, held until it is closed. */
    record Turn(Semaphore free) implements AutoCloseable {
        @Override
        public void close() {
            free.release();
        }
    }

    /** @throws Problem {@code busy} if there is none */
    Turn take() {
        if (!free.tryAcquire()) {
            throw new Problem(ProblemCode.BUSY, "Enough tables are being taken already; nothing of this one was read.")
                    .withHeader("Retry-After", RETRY_SECONDS);
        }
        return new Turn(free);
    }
}
