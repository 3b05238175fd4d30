package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

/** A herd is read in several queries; a correction between two of them must neither double a record nor hide one. */
@QuarkusTest
class ReadWhileCorrectedContractTest {
    private static final int COWS = 150;
    private static final int READINGS = 24;
    /** Identifiers posted before are kept, and an animal has ten at most. */
    private static final int NAMES = 4;

    private static final String DAY = "?asOf=2025-12-01";

    @Test
    void everyReadingHasEachAnimalOnce() {
        TestHerd herd = TestHerd.make();
        herd.bulk("animals", TestHerd.NDJSON, animals("first")).expecting(200);
        StringBuilder calvings = new StringBuilder();
        for (int cow = 0; cow < COWS; cow++) {
            calvings.append("{\"animal\":")
                    .append(TestHerd.animal("A" + cow))
                    .append(",\"date\":\"2025-08-19\",\"parity\":2}\n");
        }
        herd.bulk("calvings", TestHerd.NDJSON, calvings.toString()).expecting(200);
        AtomicBoolean stop = new AtomicBoolean();
        CompletableFuture<Integer> corrections = CompletableFuture.supplyAsync(() -> corrected(herd, stop));
        try {
            for (int i = 0; i < READINGS; i++) {
                assertThat(herd.get("/summary" + DAY).expecting(200).countAt("/animals/total"))
                        .isEqualTo(COWS);
                assertThat(herd.get("/animals?count=true&limit=500")
                                .expecting(200)
                                .countAt("/total"))
                        .isEqualTo(COWS);
                herd.get("/breeding-worklist" + DAY).expecting(200);
            }
        } finally {
            stop.set(true);
        }
        assertThat(corrections.join()).as("corrections while the herd was read").isPositive();
    }

    /** Identifiers lie in a table of their own, which is read after the animals. */
    @Test
    void everyAnimalIsShownWithTheIdentifiersItHadWithItsName() {
        TestHerd herd = TestHerd.make();
        herd.bulk("animals", TestHerd.NDJSON, animals("first")).expecting(200);
        AtomicBoolean stop = new AtomicBoolean();
        CompletableFuture<Integer> corrections = CompletableFuture.supplyAsync(() -> corrected(herd, stop));
        try {
            for (int i = 0; i < 4 * READINGS; i++) {
                for (JsonNode item :
                        herd.get("/animals?limit=500").expecting(200).at("/items")) {
                    JsonNode animal = item.get("record");
                    assertThat(animal.at("/identifiers/1/id").asText())
                            .as(item.toString())
                            .isEqualTo(animal.at("/identifiers/0/id").asText() + " "
                                    + animal.get("name").asText());
                }
            }
        } finally {
            stop.set(true);
        }
        assertThat(corrections.join()).as("corrections while the herd was read").isPositive();
    }

    private static int corrected(TestHerd herd, AtomicBoolean stop) {
        int times = 0;
        while (!stop.get()) {
            herd.bulk("animals", TestHerd.NDJSON, animals("name " + times % NAMES))
                    .expecting(200);
            times++;
        }
        return times;
    }

    private static String animals(String name) {
        StringBuilder animals = new StringBuilder();
        for (int cow = 0; cow < COWS; cow++) {
            animals.append("{\"identifiers\":[")
                    .append(TestHerd.animal("A" + cow))
                    .append(",")
                    .append(TestHerd.animal("A" + cow + " " + name))
                    .append("],\"sex\":\"female\",\"name\":\"")
                    .append(name)
                    .append("\"}\n");
        }
        return animals.toString();
    }
}
