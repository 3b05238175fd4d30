package org.pailbook.records.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.TestDayRow;

/** Posts that wait in one line while the first is being stored; what the database would do is done here by hand. */
@Timeout(60)
class PostLinesRegressionTest {
    private static final int BEHIND = 10;

    private final PostLines lines = new PostLines();
    private final PostLines.Place place = new PostLines.Place("test-days", "herd", "key");
    private final ExecutorService clients = Executors.newCachedThreadPool();
    private final CountDownLatch firstIsIn = new CountDownLatch(1);
    private final CountDownLatch othersWait = new CountDownLatch(1);
    private final AtomicInteger attempts = new AtomicInteger();

    @AfterEach
    void end() {
        clients.shutdownNow();
    }

    /** The first post by itself; the others once all of them wait behind it. */
    private List<CompletableFuture<RowOutcome<TestDayRow>>> posts(PostLines.Storing<TestDayRow> ofThoseBehind)
            throws InterruptedException {
        PostLines.Storing<TestDayRow> storing = rows -> {
            if (rows.get(0).row() == 0) {
                firstIsIn.countDown();
                await(othersWait);
                return stored(rows);
            }
            attempts.incrementAndGet();
            return ofThoseBehind.apply(rows);
        };
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = new ArrayList<>();
        posts.add(post(0, storing));
        await(firstIsIn);
        for (int i = 1; i <= BEHIND; i++) {
            posts.add(post(i, storing));
        }
        Thread.sleep(Duration.ofMillis(500).toMillis()); // until they stand in the line
        othersWait.countDown();
        return posts;
    }

    private CompletableFuture<RowOutcome<TestDayRow>> post(int row, PostLines.Storing<TestDayRow> storing) {
        PostedRow posted = new PostedRow(row, 0, "", JsonNodeFactory.instance.objectNode(), List.of());
        return CompletableFuture.supplyAsync(() -> lines.take(place, posted, storing), clients);
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    private static Optional<List<RowOutcome<TestDayRow>>> stored(List<PostedRow> rows) {
        return Optional.of(rows.stream()
                .map(row -> new RowOutcome<>(row, Outcome.CREATED, new TestDayRow(), null, List.of()))
                .toList());
    }

    @Test
    void thoseBehindAreStoredTogetherAndEachGetsItsOwnOutcome() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = posts(PostLinesRegressionTest::stored);
        for (int i = 0; i <= BEHIND; i++) {
            assertThat(posts.get(i).join().posted().row()).isEqualTo(i);
        }
        assertThat(attempts).hasValueLessThanOrEqualTo(2);
    }

    @Test
    void rowsThatHaveToDoWithOneAnotherAreStoredOneByOne() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts =
                posts(rows -> rows.size() > 1 ? Optional.empty() : stored(rows));
        for (int i = 0; i <= BEHIND; i++) {
            assertThat(posts.get(i).join().posted().row()).isEqualTo(i);
        }
    }

    @Test
    void oneRowThatCannotBeStoredDoesNotHarmTheOthers() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = posts(rows -> {
            if (rows.stream().anyMatch(row -> row.row() == 3)) {
                throw new IllegalArgumentException("the third");
            }
            return stored(rows);
        });
        for (int i = 0; i <= BEHIND; i++) {
            CompletableFuture<RowOutcome<TestDayRow>> post = posts.get(i);
            if (i == 3) {
                assertThatThrownBy(post::join).hasRootCauseMessage("the third");
            } else {
                assertThat(post.join().outcome()).isEqualTo(Outcome.CREATED);
            }
        }
    }

    @Test
    void aDatabaseThatIsAwayIsNotAskedOnceForEveryRow() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = posts(rows -> {
            throw new IllegalStateException("away");
        });
        posts.get(0).join();
        for (CompletableFuture<RowOutcome<TestDayRow>> post : posts.subList(1, posts.size())) {
            assertThatThrownBy(post::join).hasRootCauseMessage("away");
        }
        // together, and twice alone; once more if one came late
        assertThat(attempts).hasValueLessThanOrEqualTo(4);
    }

    /** The gate has let everybody wait for half a minute then. */
    @Test
    void whereTheTurnToWriteDoesNotComeAllAreToldAtOnce() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = posts(rows -> {
            throw new Problem(ProblemCode.BUSY, "try again");
        });
        posts.get(0).join();
        for (CompletableFuture<RowOutcome<TestDayRow>> post : posts.subList(1, posts.size())) {
            assertThatThrownBy(post::join).hasRootCauseMessage("try again");
        }
        // once more if one came late
        assertThat(attempts).hasValueLessThanOrEqualTo(2);
    }

    @Test
    void nobodyWaitsForEverAfterAnError() throws Exception {
        List<CompletableFuture<RowOutcome<TestDayRow>>> posts = posts(rows -> {
            throw new AssertionError("out of order");
        });
        posts.get(0).join();
        for (CompletableFuture<RowOutcome<TestDayRow>> post : posts.subList(1, posts.size())) {
            assertThatThrownBy(post::join).isInstanceOf(CompletionException.class);
        }
    }
}
