package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Single posts that come at the same time may be stored by one commit; each is answered as if it had come alone. */
@QuarkusTest
class SimultaneousPostsContractTest {
    private static final int WRITERS = 8;

    @Test
    void eachOfManyPostsIsAnsweredForItself() throws Exception {
        TestHerd herd = TestHerd.make();
        for (int cow = 0; cow < 10; cow++) {
            herd.post(
                            "animals",
                            "{\"identifiers\":[" + TestHerd.animal("A" + cow) + "," + TestHerd.animal("B" + cow) + "]}")
                    .expecting(201);
        }
        List<Callable<Answer>> posts = new ArrayList<>();
        for (int day = 1; day <= 20; day++) {
            String date = "2025-01-%02d".formatted(day);
            for (int cow = 0; cow < 10; cow++) {
                // the same cow twice by her two names, with the same values, and one row that is refused
                for (String name : List.of("A" + cow, "B" + cow)) {
                    posts.add(() -> herd.post("test-days", TestHerd.testDayJson(name, date, 20)));
                }
            }
            posts.add(() -> herd.post("test-days", TestHerd.testDayJson("A0", date, -5)));
            posts.add(() -> herd.post("test-days", TestHerd.testDayJson("unknown", date, 20)));
        }
        ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
        List<Integer> statuses = new ArrayList<>();
        try {
            for (Future<Answer> answer : writers.invokeAll(posts)) {
                statuses.add(answer.get().status());
            }
        } finally {
            writers.shutdown();
        }

        assertThat(statuses).filteredOn(status -> status == 201).hasSize(200);
        assertThat(statuses).filteredOn(status -> status == 200).hasSize(200);
        assertThat(statuses).filteredOn(status -> status == 422).hasSize(40);
        Answer changes = herd.get("/changes?after=0&limit=1000").expecting(200);
        assertThat(changes.countAt("/nextAfter")).isEqualTo(10 + 200);
    }

    @Test
    void aRefusedRowDoesNotHinderAGoodOneOfTheSameRequest() {
        TestHerd herd = TestHerd.make().withAnimal("A").withAnimal("B", ",\"birthDate\":\"2022-03-01\"");
        // the first of each is refused, one for its reasons and one for a day before her birth, so the second is not
        // the second one
        String departures = "{\"animal\":" + TestHerd.animal("A")
                + ",\"date\":\"2024-05-01\",\"kind\":\"sale\",\"secondReason\":\"age\"}\n"
                + "{\"animal\":" + TestHerd.animal("A") + ",\"date\":\"2024-06-01\",\"kind\":\"sale\"}\n";
        Answer left = herd.bulk("departures", TestHerd.NDJSON, departures).expecting(200);
        assertThat(left.countAt("/created")).as(left.text()).isEqualTo(1);
        assertThat(left.countAt("/refused")).isEqualTo(1);
        String calvings = "{\"animal\":" + TestHerd.animal("B") + ",\"date\":\"2022-02-01\",\"parity\":2}\n"
                + "{\"animal\":" + TestHerd.animal("B") + ",\"date\":\"2022-08-01\",\"parity\":2}\n";
        Answer calved = herd.bulk("calvings", TestHerd.NDJSON, calvings).expecting(200);
        assertThat(calved.countAt("/created")).as(calved.text()).isEqualTo(1);
    }
}
