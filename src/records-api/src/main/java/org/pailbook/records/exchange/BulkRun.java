package org.pailbook.records.exchange;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import org.pailbook.records.intake.HerdMemory;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.TableStatistics;

/**
 * One body of many records on its way in. Chunks are stored one after the other in the order sent, each on a thread of its own while the
 * next one is read, so that no more than two are held.
 */
public final class BulkRun<E extends StoredRecord> {
    private static final int CHUNK_ROWS = 1_000;

    /** After so many new rows the database is told, and again each time there are four times as many. */
    private static final int FIRST_COUNT_ROWS = 1_000;

    private static final int COUNT_AGAIN_FACTOR = 4;

    private final RecordIntake intake;
    private final TableStatistics statistics;
    private final RecordKind<E> kind;
    private final HerdRow herd;
    private final String writtenBy;
    private final BulkOptions options;
    private final int mostRows;
    private final RowSink sink;
    private final HerdMemory memory = new HerdMemory();
    private CompletableFuture<Void> storing = CompletableFuture.completedFuture(null);
    private int countAtRows = FIRST_COUNT_ROWS;

    /** @param mostRows of a body; one with more is refused */
    public BulkRun(
            RecordIntake intake,
            TableStatistics statistics,
            RecordKind<E> kind,
            HerdRow herd,
            String writtenBy,
            BulkOptions options,
            int mostRows,
            RowSink sink) {
        this.intake = intake;
        this.statistics = statistics;
        this.kind = kind;
        this.herd = herd;
        this.writtenBy = writtenBy;
        this.options = options;
        this.mostRows = mostRows;
        this.sink = sink;
    }

    /**
     * Takes all rows. When it returns or throws, nothing is being stored any more and the sink was told all that was.
     *
     * @param beside where chunks are stored; with one that runs what it is given at once, each is stored before the next is read
     */
    public void take(RowReader reader, Executor beside) throws IOException {
        try {
            List<PostedRow> rest = takeChunks(reader, beside);
            await();
            if (!rest.isEmpty()) {
                takeChunk(intake.read(kind, herd, rest));
            }
            if (isStored() && sink.count(Outcome.CREATED) >= FIRST_COUNT_ROWS) {
                statistics.refresh(kind.entity(), sink.count(Outcome.CREATED));
            }
        } finally {
            storing.handle((done, failure) -> null).join();
        }
    }

    /** @return the last rows, fewer than a chunk; all of them, if all or nothing is to be stored: the body is first read to its end */
    private List<PostedRow> takeChunks(RowReader reader, Executor beside) throws IOException {
        List<PostedRow> rows = new ArrayList<>();
        int read = 0;
        for (PostedRow row = reader.next(); row != null; row = reader.next()) {
            if (++read > mostRows) {
                throw new Problem(
                        ProblemCode.TOO_LARGE,
                        "A request may have at most " + mostRows + " rows"
                                + (options.atomic() ? " with atomic=true." : "."));
            }
            rows.add(row);
            if (rows.size() == CHUNK_ROWS && !options.atomic()) {
                List<Posted<E>> chunk = intake.read(kind, herd, rows);
                await();
                storing = CompletableFuture.runAsync(() -> takeChunk(chunk), beside);
                rows = new ArrayList<>();
            }
        }
        return rows;
    }

    /** Waits until the chunk before is stored. */
    private void await() {
        try {
            storing.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw failed;
        }
    }

    private void takeChunk(List<Posted<E>> chunk) {
        intake.take(kind, herd, writtenBy, chunk, options.mode(), memory).forEach(sink::add);
        int created = sink.count(Outcome.CREATED);
        if (created >= countAtRows && isStored()) {
            statistics.refresh(kind.entity(), created);
            countAtRows = created * COUNT_AGAIN_FACTOR;
        }
    }

    private boolean isStored() {
        return !options.dryRun() && !(options.atomic() && sink.count(Outcome.REFUSED) > 0);
    }
}
