package org.pailbook.records.app;

import io.quarkus.arc.All;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.pailbook.records.computed.InventedHerd;
import org.pailbook.records.computed.Rehearsed;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.OutputVersion;

/**
 * Works an invented herd out a few times after a start, on one processor and beside the requests: what the first reader of a large herd waits
 * for is mostly the virtual machine compiling the work. Nothing of that herd is stored, served or counted.
 */
@ApplicationScoped
class Rehearsal {
    private static final Logger LOG = Logger.getLogger(Rehearsal.class);

    /** Many cows a few times, since what is compiled for a small herd is compiled again for a large one; measured. */
    private static final int COWS = 4_000;

    private static final int TURNS = 6;

    private final List<Rehearsed> works;
    private final CowRecords records;
    private final OutputVersion methods;
    private final boolean isWanted;
    private volatile boolean isStopped;

    @Inject
    Rehearsal(
            @All List<Rehearsed> works,
            CowRecords records,
            OutputVersion methods,
            @ConfigProperty(name = "pailbook.rehearsal") boolean isWanted) {
        this.works = works;
        this.records = records;
        this.methods = methods;
        this.isWanted = isWanted;
    }

    /** @param self as others see it, so that each turn has a session of its own */
    void onStart(@Observes StartupEvent event, Rehearsal self) {
        if (isWanted) {
            // what is parallel in the work stays on this pool's one thread
            ForkJoinPool one = new ForkJoinPool(1);
            ClassLoader classes = Thread.currentThread().getContextClassLoader();
            one.execute(() -> {
                Thread.currentThread().setContextClassLoader(classes);
                rehearse(self);
            });
            one.shutdown();
        }
    }

    void onStop(@Observes ShutdownEvent event) {
        isStopped = true;
    }

    private void rehearse(Rehearsal self) {
        try {
            methods.text();
            for (int turn = 1; turn <= TURNS && !isStopped; turn++) {
                self.turn(COWS, turn, OutputStream.nullOutputStream());
            }
            // takes the place of what is kept of the large one
            self.turn(0, TURNS + 1, OutputStream.nullOutputStream());
        } catch (IOException | RuntimeException failed) {
            // nothing depends on this, and whoever asks for the same is told why it cannot be had
            if (!isStopped) {
                LOG.warnf("The rehearsal ended early: %s", failed);
            }
        }
    }

    /** Once, with a herd of that size. */
    @ActivateRequestContext
    void turn(int cows, int turn, OutputStream out) throws IOException {
        InventedHerd herd = InventedHerd.of(cows, turn);
        AsOf asOf = new AsOf(InventedHerd.DAY, herd.row().recordedAt, herd.row().recordedAt);
        records.hold(herd.row(), InventedHerd.DAY, herd.animals(), herd.records());
        for (Rehearsed work : works) {
            work.rehearse(herd, asOf, out);
        }
    }
}
