package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The change feed: every version of every record once, in order, whoever writes meanwhile. */
@QuarkusTest
class ChangesContractTest {
    @ParameterizedTest
    @MethodSource("org.pailbook.records.VersionsContractTest#kinds")
    void everyVersionOfEveryKindComesOnceWithItsContentThen(VersionsContractTest.Kind kind) {
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
        Answer made = herd.post(kind.path(), kind.body()).expecting(201);
        String one = "/" + kind.path() + "/" + made.textAt("/id");
        Answer replaced = herd.put(one, "*", kind.other()).expecting(200);
        herd.put(one, "*", kind.other()).expecting(200);
        herd.delete(one, "*").expecting(200);
        Answer back = herd.post(kind.path(), kind.body()).expecting(200);

        Answer answer = herd.get("/changes").expecting(200);
        JsonNode changes = answer.at("/changes");
        assertThat(changes.findValuesAsText("seq")).containsExactly("1", "2", "3", "4", "5", "6");
        assertThat(answer.countAt("/nextAfter")).isEqualTo(6);
        assertThat(answer.at("/more").asBoolean()).isFalse();
        assertThat(changes.at("/0/kind").asText()).isEqualTo("animal");
        assertThat(changes.at("/1/kind").asText()).isEqualTo("calving");
        List<JsonNode> of = new ArrayList<>();
        changes.forEach(change -> {
            if (change.path("id").asText().equals(made.textAt("/id"))) {
                of.add(change);
            }
        });
        assertThat(of)
                .extracting(change -> change.path("action").asText())
                .containsExactly("created", "updated", "withdrawn", "revived");
        assertThat(of).extracting(change -> change.path("version").asInt()).containsExactly(1, 2, 3, 4);
        assertThat(of)
                .allSatisfy(
                        change -> assertThat(change.path("kind").asText() + "s").isEqualTo(kind.path()));
        assertThat(of)
                .extracting(change -> change.path("record"))
                .containsExactly(
                        made.at("/record"), replaced.at("/record"), replaced.at("/record"), back.at("/record"));
    }

    @Test
    void aReaderGoesOnWhereItStoppedAndLearnsOfTheHerdsOwnName() {
        TestHerd herd = TestHerd.make().withAnimal("A1").withAnimal("A2").withAnimal("A3");
        herd.patch("", "*", "{\"name\":\"Upper Field\"}").expecting(200);
        herd.patch("", "*", "{\"name\":\"Lower Field\"}").expecting(200);
        Answer first = herd.get("/changes?limit=2").expecting(200);
        assertThat(first.at("/changes").size()).isEqualTo(2);
        assertThat(first.at("/more").asBoolean()).isTrue();
        Answer rest = herd.get("/changes?after=" + first.countAt("/nextAfter")).expecting(200);
        assertThat(rest.at("/changes").findValuesAsText("seq")).containsExactly("3", "4", "5");
        assertThat(rest.at("/changes").findValuesAsText("kind")).containsExactly("animal", "herd", "herd");
        assertThat(rest.textAt("/changes/1/record/name")).isEqualTo("Upper Field");
        assertThat(rest.textAt("/changes/2/record/name")).isEqualTo("Lower Field");
        Answer nothing = herd.get("/changes?after=5").expecting(200);
        assertThat(nothing.at("/changes").size()).isZero();
        assertThat(nothing.countAt("/nextAfter")).isEqualTo(5);
    }

    @Test
    void aReaderWhoPollsWhileManyWriteMissesNothingAndRepeatsNothing() throws Exception {
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-01-01", 1);
        int writers = 4;
        int rounds = 15;
        ExecutorService pool = Executors.newFixedThreadPool(writers + 1);
        AtomicBoolean written = new AtomicBoolean();
        try {
            List<Future<Integer>> writing = new ArrayList<>();
            for (int writer = 0; writer < writers; writer++) {
                String animal = "W" + writer;
                Callable<Integer> work = () -> write(herd, animal, rounds);
                writing.add(pool.submit(work));
            }
            Future<List<JsonNode>> reading = pool.submit(() -> poll(herd, written));
            int changes = 2;
            for (Future<Integer> done : writing) {
                changes += done.get();
            }
            written.set(true);
            List<JsonNode> read = reading.get();
            assertThat(read).hasSize(changes);
            Map<String, Integer> versions = new HashMap<>();
            for (int i = 0; i < read.size(); i++) {
                JsonNode change = read.get(i);
                assertThat(change.path("seq").asInt()).isEqualTo(i + 1);
                String id = change.path("id").asText();
                assertThat(change.path("version").asInt()).isEqualTo(versions.merge(id, 1, Integer::sum));
                if (change.path("kind").asText().equals("test-day")) {
                    // the writer puts the number of the version into the weight
                    assertThat(change.at("/record/milkKg").asInt())
                            .isEqualTo(20 + change.path("version").asInt());
                }
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static int write(TestHerd herd, String animal, int rounds) {
        herd.withAnimal(animal);
        int changes = 1;
        String start = "{\"animal\":" + TestHerd.animal(animal) + ",\"date\":\"2025-11-12\",\"milkKg\":";
        for (int round = 1; round <= rounds; round++) {
            herd.post("test-days", start + (20 + round) + "}");
            changes++;
        }
        return changes;
    }

    private static List<JsonNode> poll(TestHerd herd, AtomicBoolean written) {
        List<JsonNode> read = new ArrayList<>();
        long after = 0;
        while (true) {
            boolean last = written.get();
            Answer answer = herd.get("/changes?limit=7&after=" + after).expecting(200);
            answer.at("/changes").forEach(read::add);
            after = answer.at("/nextAfter").asLong();
            if (last && !answer.at("/more").asBoolean()) {
                return read;
            }
        }
    }
}
