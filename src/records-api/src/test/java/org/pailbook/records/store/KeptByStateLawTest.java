package org.pailbook.records.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Many who ask at once: one works it out, few work on large herds, and a failure is not handed on. */
@Timeout(60)
class KeptByStateLawTest {
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);
    private static final int ASKING = 8;
    private final ExecutorService threads = Executors.newFixedThreadPool(ASKING);

    @AfterEach
    void stop() {
        threads.shutdownNow();
    }

    private static HerdRow herd(String id, long changes) {
        HerdRow herd = new HerdRow();
        herd.id = id;
        herd.changeSeq = changes;
        return herd;
    }

    private List<String> askAtOnce(java.util.function.IntFunction<String> asked) {
        List<CompletableFuture<String>> answers = IntStream.range(0, ASKING)
                .mapToObj(i -> CompletableFuture.supplyAsync(() -> asked.apply(i), threads))
                .toList();
        return answers.stream().map(CompletableFuture::join).toList();
    }

    @Test
    void oneWorksItOutForAll() {
        KeptByState<String> kept = new KeptByState<>(10, 100, String::length);
        AtomicInteger made = new AtomicInteger();
        CountDownLatch all = new CountDownLatch(ASKING);
        List<String> answers = askAtOnce(i -> {
            all.countDown();
            return kept.of(herd("a", 1), DAY, () -> {
                awaited(all);
                return "made " + made.incrementAndGet();
            });
        });
        assertThat(answers).containsOnly("made 1");
    }

    @Test
    void whatIsTooHeavyToKeepIsGivenToThoseWhoWaited() {
        KeptByState<String> kept = new KeptByState<>(10, 3, String::length);
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        CompletableFuture<String> first = CompletableFuture.supplyAsync(
                () -> kept.of(herd("a", 1), DAY, () -> {
                    begun.countDown();
                    awaited(go);
                    return "first";
                }),
                threads);
        awaited(begun);
        CompletableFuture<String> second =
                CompletableFuture.supplyAsync(() -> kept.of(herd("a", 1), DAY, () -> "second"), threads);
        assertThatThrownBy(() -> second.get(200, TimeUnit.MILLISECONDS))
                .isInstanceOf(java.util.concurrent.TimeoutException.class);
        go.countDown();
        assertThat(first.join()).isEqualTo("first");
        assertThat(second.join()).isEqualTo("first");
        assertThat(kept.of(herd("a", 1), DAY, () -> "third")).isEqualTo("third");
    }

    @Test
    void whoWaitedForAFailureTriesItself() {
        KeptByState<String> kept = new KeptByState<>(10, 100, String::length);
        AtomicInteger tries = new AtomicInteger();
        List<String> answers = askAtOnce(i -> {
            try {
                return kept.of(herd("a", 1), DAY, () -> {
                    if (tries.incrementAndGet() <= 3) {
                        throw new IllegalStateException("the database is away");
                    }
                    return "made";
                });
            } catch (IllegalStateException away) {
                return away.getMessage();
            }
        });
        assertThat(answers)
                .contains("made")
                .filteredOn("the database is away"::equals)
                .hasSize(3);
        assertThat(tries).hasValue(4);
    }

    @Test
    void noMoreThanTwoLargeHerdsAreWorkedOutAtOnce() {
        KeptByState<String> kept = new KeptByState<>(10, 100, text -> 100);
        AtomicInteger now = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        askAtOnce(i -> kept.of(herd("large", 1), DAY.plusDays(i), () -> {
            most.accumulateAndGet(now.incrementAndGet(), Math::max);
            paused(30);
            now.decrementAndGet();
            return "made";
        }));
        assertThat(most.get()).isBetween(1, 2);
    }

    @Test
    void smallHerdsDoNotWaitForEachOther() {
        KeptByState<String> kept = new KeptByState<>(100, 100, text -> 1);
        // what was never seen counts as large
        IntStream.range(0, ASKING).forEach(i -> kept.of(herd("small" + i, 1), DAY, () -> "made"));
        CountDownLatch all = new CountDownLatch(ASKING);
        List<String> answers = askAtOnce(i -> kept.of(herd("small" + i, 2), DAY, () -> {
            all.countDown();
            awaited(all);
            return "again";
        }));
        assertThat(answers).containsOnly("again");
    }

    @Test
    void askingAgainInTheMidstOfMakingDoesNotWaitForItself() {
        KeptByState<String> kept = new KeptByState<>(10, 100, String::length);
        HerdRow herd = herd("a", 1);
        assertThat(kept.of(herd, DAY, () -> kept.of(herd, DAY, () -> "inner") + " in outer"))
                .isEqualTo("inner in outer");
    }

    @Test
    void anOlderStateGoesWhenANewerOneIsAsked() {
        KeptByState<String> kept = new KeptByState<>(10, 100, String::length);
        kept.of(herd("a", 1), DAY, () -> "old");
        assertThat(kept.of(herd("a", 2), DAY, () -> "new")).isEqualTo("new");
        assertThat(kept.of(herd("a", 1), DAY, () -> "made anew")).isEqualTo("made anew");
    }

    private static void awaited(CountDownLatch latch) {
        try {
            assertThat(latch.await(30, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    private static void paused(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }
}
