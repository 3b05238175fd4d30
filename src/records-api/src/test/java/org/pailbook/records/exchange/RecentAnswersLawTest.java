package org.pailbook.records.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collections;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** What is kept never grows beyond its room, and what was asked for longest ago goes first. */
class RecentAnswersLawTest {
    private static final String QUARTER = "x".repeat(1 << 18);

    @Test
    void theOneAskedForLongestAgoMakesRoom() {
        RecentAnswers recent = new RecentAnswers(1);
        for (String tag : new String[] {"a", "b", "c", "d"}) {
            recent.keep(tag, QUARTER);
        }
        assertThat(recent.find("a")).contains(QUARTER);
        recent.keep("e", QUARTER);
        assertThat(recent.find("b")).isEmpty();
        assertThat(recent.find("a")).isPresent();
        assertThat(recent.find("e")).isPresent();
    }

    @Test
    void keepingTheSameAgainTakesNoMoreRoom() {
        RecentAnswers recent = new RecentAnswers(1);
        recent.keep("first", QUARTER);
        for (int i = 0; i < 10; i++) {
            recent.keep("again", QUARTER);
        }
        assertThat(recent.find("first")).isPresent();
    }

    @Test
    void aTextOfMoreThanAThirdOfTheRoomIsNotKeptAndNothingIsInNone() {
        RecentAnswers recent = new RecentAnswers(1);
        recent.keep("long", QUARTER + QUARTER);
        assertThat(recent.find("long")).isEmpty();
        RecentAnswers none = new RecentAnswers(0);
        none.keep("any", "x");
        assertThat(none.find("any")).isEmpty();
    }

    @Test
    void manyWhoAskForTheSameAtOnceAreGivenWhatWasMadeOnce() throws Exception {
        RecentAnswers recent = new RecentAnswers(1);
        AtomicInteger made = new AtomicInteger();
        CountDownLatch begun = new CountDownLatch(8);
        ExecutorService askers = Executors.newFixedThreadPool(8);
        try {
            Callable<String> ask = () -> {
                begun.countDown();
                begun.await();
                return recent.findOrMake("tag", () -> "made " + made.incrementAndGet());
            };
            for (Future<String> answer : askers.invokeAll(Collections.nCopies(8, ask))) {
                assertThat(answer.get()).isEqualTo("made 1");
            }
        } finally {
            askers.shutdownNow();
        }
    }

    @Test
    void whatCouldNotBeMadeIsMadeWhenItIsAskedForNext() {
        RecentAnswers recent = new RecentAnswers(1);
        assertThatThrownBy(() -> recent.findOrMake("tag", () -> {
                    throw new IllegalStateException("not now");
                }))
                .hasMessage("not now");
        assertThat(recent.findOrMake("tag", () -> "made")).isEqualTo("made");
    }
}
