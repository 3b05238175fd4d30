package org.pailbook.records.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jboss.logging.Logger;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.StoredRecord;

/**
 * Lines in which single posts wait for their turn. Whoever comes to the head stores those behind as well, in one transaction, so that one lock
 * of the herd and one commit serve all that waited while another was storing. Nobody is answered before that commit; where the rows have to do
 * with one another, or storing them together fails, each is stored by itself, in order. If that fails again and again it is not the rows, and
 * those left are told the same at once instead of waiting for it one after the other.
 */
final class PostLines {
    private static final Logger LOG = Logger.getLogger(PostLines.class);
    private static final int MOST_TOGETHER = 64;
    private static final int MOST_FAILURES_IN_A_ROW = 2;
    private static final long LONGEST_WAIT_SECONDS = 30;

    /** Whose posts wait in one line. */
    record Place(String kind, String herdId, String writtenBy) {}

    private record Waiting<E extends StoredRecord>(PostedRow row, CompletableFuture<RowOutcome<E>> outcome) {}

    private static final class Line<E extends StoredRecord> {
        final ReentrantLock turn = new ReentrantLock(true);
        final ConcurrentLinkedQueue<Waiting<E>> waiting = new ConcurrentLinkedQueue<>();
        int users;
    }

    private final ConcurrentMap<Place, Line<?>> lines = new ConcurrentHashMap<>();

    /** Stores rows in one transaction and tells their outcomes in order; nothing is stored if they have to do with one another. */
    interface Storing<E extends StoredRecord> extends Function<List<PostedRow>, Optional<List<RowOutcome<E>>>> {}

    <E extends StoredRecord> RowOutcome<E> take(Place place, PostedRow row, Storing<E> storing) {
        Line<E> line = enter(place);
        try {
            Waiting<E> mine = new Waiting<>(row, new CompletableFuture<>());
            line.waiting.add(mine);
            if (awaitTurn(line)) {
                try {
                    while (!mine.outcome.isDone()) {
                        storeTogether(line, storing);
                    }
                } finally {
                    line.turn.unlock();
                }
            } else if (line.waiting.remove(mine)) {
                throw new Problem(ProblemCode.BUSY, "Other writes took too long; try again.")
                        .withHeader("Retry-After", "2");
            }
            return mine.outcome.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException why) {
                throw why;
            }
            throw failed;
        } finally {
            leave(place);
        }
    }

    private static <E extends StoredRecord> void storeTogether(Line<E> line, Storing<E> storing) {
        List<Waiting<E>> group = new ArrayList<>();
        while (group.size() < MOST_TOGETHER && !line.waiting.isEmpty()) {
            Waiting<E> next = line.waiting.poll();
            if (next != null) {
                group.add(next);
            }
        }
        try {
            if (group.size() < 2 || !storedAsOne(group, storing)) {
                storeEach(group, storing);
            }
        } finally {
            // whatever happened here, nobody waits for ever
            group.forEach(one -> one.outcome.completeExceptionally(new IllegalStateException("not stored")));
        }
    }

    private static <E extends StoredRecord> boolean storedAsOne(List<Waiting<E>> group, Storing<E> storing) {
        Optional<List<RowOutcome<E>>> outcomes;
        try {
            outcomes = storing.apply(group.stream().map(Waiting::row).toList());
        } catch (RuntimeException together) {
            if (isBusy(together)) {
                group.forEach(one -> one.outcome.completeExceptionally(together));
                return true;
            }
            LOG.warnf("%d posts could not be stored together and are stored one by one: %s", group.size(), together);
            return false;
        }
        outcomes.ifPresent(stored -> {
            for (int i = 0; i < group.size(); i++) {
                group.get(i).outcome.complete(stored.get(i));
            }
        });
        return outcomes.isPresent();
    }

    private static <E extends StoredRecord> void storeEach(List<Waiting<E>> group, Storing<E> storing) {
        int failures = 0;
        for (int i = 0; i < group.size(); i++) {
            Waiting<E> one = group.get(i);
            try {
                one.outcome.complete(
                        storing.apply(List.of(one.row)).orElseThrow().get(0));
                failures = 0;
            } catch (RuntimeException failed) {
                failures++;
                List<Waiting<E>> told = failures < MOST_FAILURES_IN_A_ROW && !isBusy(failed)
                        ? List.of(one)
                        : group.subList(i, group.size());
                told.forEach(waiting -> waiting.outcome.completeExceptionally(failed));
                if (told.size() > 1) {
                    return;
                }
            }
        }
    }

    /** The turn to write did not come within the longest wait, which has nothing to do with the rows: nobody is made to wait that long again. */
    private static boolean isBusy(RuntimeException failed) {
        return failed instanceof Problem problem && problem.code() == ProblemCode.BUSY;
    }

    private static boolean awaitTurn(Line<?> line) {
        try {
            return line.turn.tryLock(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** A place tells the kind, so the line it finds holds rows of that kind. */
    @SuppressWarnings("unchecked")
    private <E extends StoredRecord> Line<E> enter(Place place) {
        return (Line<E>) lines.compute(place, (any, line) -> {
            Line<?> entered = line == null ? new Line<E>() : line;
            entered.users++;
            return entered;
        });
    }

    private void leave(Place place) {
        lines.computeIfPresent(place, (any, line) -> --line.users == 0 ? null : line);
    }
}
