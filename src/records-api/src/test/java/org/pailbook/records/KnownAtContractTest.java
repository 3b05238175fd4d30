package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The second clock: an answer given once is given again, word for word, whatever was corrected since. */
@QuarkusTest
class KnownAtContractTest {
    private static final int COWS = 12;
    private static final String AS_OF = "asOf=2025-10-31";

    /** Every address that reads records or computes from them. */
    private static final List<String> COMPUTED = List.of(
            "/summary?" + AS_OF,
            "/projection-accuracy?" + AS_OF,
            "/animals/example.eartag:C3/summary?" + AS_OF,
            "/animals/example.eartag:C3/lactations?explain=true&" + AS_OF,
            "/animals/example.eartag:C3/lactations/current?daily=true&" + AS_OF,
            "/animals/example.eartag:C3/lactations/1?" + AS_OF,
            "/animals/example.eartag:C3/lactations/current/curve?" + AS_OF,
            "/animals/example.eartag:C3/lactations/current/yield?" + AS_OF);

    private static final List<String> LISTS = List.of(
            "/animals?limit=1000&count=true",
            "/calvings?limit=1000&count=true",
            "/test-days?limit=1000&count=true&includeWithdrawn=true",
            "/test-days?limit=1000&animal=example.eartag:C3",
            "/test-days?limit=1000&from=2025-06-01&to=2025-08-31&count=true",
            "/dry-offs?limit=1000",
            "/departures?limit=1000");

    /** Two lactations of each cow, the first completed, so that the herd has standards and calibration of its own. */
    private static TestHerd herd() {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder();
        StringBuilder calvings = new StringBuilder();
        StringBuilder dryOffs = new StringBuilder();
        StringBuilder tests = new StringBuilder();
        for (int cow = 0; cow < COWS; cow++) {
            String animal = TestHerd.animal("C" + cow);
            animals.append("{\"identifiers\":[" + animal + "],\"name\":\"Cow " + cow + "\",\"breed\":\"HOL\"}\n");
            LocalDate first = LocalDate.of(2024, 4, 1).plusDays(cow);
            LocalDate second = LocalDate.of(2025, 5, 1).plusDays(cow);
            calvings.append("{\"animal\":" + animal + ",\"date\":\"" + first + "\",\"parity\":1}\n");
            calvings.append("{\"animal\":" + animal + ",\"date\":\"" + second + "\",\"parity\":2}\n");
            dryOffs.append("{\"animal\":" + animal + ",\"date\":\"" + first.plusDays(320) + "\"}\n");
            for (int test = 0; test < 10; test++) {
                tests.append(test(cow, first.plusDays(20 + 30L * test), 30 - 1.5 * test + cow % 5))
                        .append('\n');
            }
            for (int test = 0; test < 5; test++) {
                tests.append(test(cow, second.plusDays(20 + 30L * test), 36 - 1.5 * test + cow % 5))
                        .append('\n');
            }
        }
        Map<String, StringBuilder> all = new LinkedHashMap<>();
        all.put("animals", animals);
        all.put("calvings", calvings);
        all.put("dry-offs", dryOffs);
        all.put("test-days", tests);
        all.forEach((kind, rows) -> assertThat(herd.bulk(kind, TestHerd.NDJSON, rows.toString())
                        .expecting(200)
                        .countAt("/refused"))
                .isZero());
        return herd;
    }

    private static String test(int cow, LocalDate date, double milkKg) {
        return "{\"animal\":%s,\"date\":\"%s\",\"milkKg\":%s,\"fatPct\":4.1,\"proteinPct\":3.4,\"sccThousandPerMl\":90}"
                .formatted(TestHerd.animal("C" + cow), date, milkKg);
    }

    private static String withoutComputedAt(Answer answer) {
        return answer.expecting(200).text().replaceAll("\"computedAt\":\"[^\"]*\"", "\"computedAt\":\"\"");
    }

    @Test
    void everyAnswerIsRepeatedByteForByteAfterAHundredCorrections() {
        TestHerd herd = herd();
        Map<String, Answer> before = new LinkedHashMap<>();
        COMPUTED.forEach(address -> before.put(address, herd.get(address)));
        LISTS.forEach(address -> before.put(address, herd.get(address)));
        String knownAt = before.get(COMPUTED.get(0)).expecting(200).textAt("/knownAt");
        assertThat(Instant.parse(knownAt))
                .isBeforeOrEqualTo(Instant.parse(before.get(COMPUTED.get(0)).textAt("/computedAt")));

        assertThat(correct(herd)).isGreaterThanOrEqualTo(100);

        for (Map.Entry<String, Answer> first : before.entrySet()) {
            String address = first.getKey();
            Answer again = herd.get(address + "&knownAt=" + knownAt);
            assertThat(withoutComputedAt(again)).as(address).isEqualTo(withoutComputedAt(first.getValue()));
            if (!address.startsWith("/dry-offs") && !address.startsWith("/departures")) {
                assertThat(withoutComputedAt(herd.get(address)))
                        .as("a test that cannot fail shows nothing: %s must differ by now", address)
                        .isNotEqualTo(withoutComputedAt(first.getValue()));
            }
        }
    }

    /** Corrections of every sort; the number made. */
    private static int correct(TestHerd herd) {
        int made = 0;
        List<JsonNode> tests = new ArrayList<>();
        herd.get("/test-days?limit=1000").at("/items").forEach(tests::add);
        for (int i = 0; i < 90; i++) {
            String one = "/test-days/" + tests.get(2 * i).path("id").asText();
            if (i % 5 == 0) {
                herd.delete(one, "\"1\"").expecting(200);
            } else {
                herd.patch(one, "\"1\"", "{\"milkKg\":" + (18 + i % 9) + "}").expecting(200);
            }
            made++;
        }
        // corrected twice, and withdrawn and revived: the version then in force lies deeper
        String twice = "/test-days/" + tests.get(2).path("id").asText();
        herd.patch(twice, "\"2\"", "{\"fatPct\":3.9}").expecting(200);
        herd.delete(twice, "\"3\"").expecting(200);
        herd.post("test-days", test(0, LocalDate.of(2024, 5, 21), 31)).expecting(200);
        herd.withTestDay("C3", "2025-10-28", 22.5);
        herd.withAnimal("LATE").withCalving("LATE", "2025-08-01", 1);
        String c3 = herd.getAnimal("C3", "").textAt("/id");
        herd.put("/animals/" + c3, "\"1\"", "{\"identifiers\":[" + TestHerd.animal("X3") + "],\"breed\":\"JER\"}")
                .expecting(200);
        herd.put("/animals/" + c3, "\"2\"", "{\"identifiers\":[" + TestHerd.animal("C3") + "],\"breed\":\"JER\"}")
                .expecting(200);
        herd.delete("/animals/" + herd.getAnimal("C7", "").textAt("/id"), "*").expecting(200);
        herd.get("/calvings?limit=1000").at("/items").forEach(calving -> {
            if (calving.at("/record/animal/id").asText().equals("C5")) {
                herd.delete("/calvings/" + calving.path("id").asText(), "*").expecting(200);
            }
        });
        herd.patch("", "*", "{\"name\":\"Another name\",\"timeZone\":\"Pacific/Auckland\"}")
                .expecting(200);
        return made + 12;
    }

    @Test
    void anAnimalIsFoundByTheIdentifierItHadAndARecordThatWasNotKnownYetIsNotThere() {
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
        Answer summary = herd.getAnimal("A1", "/summary?asOf=2025-11-30").expecting(200);
        String knownAt = "knownAt=" + summary.textAt("/knownAt");
        String animal = herd.getAnimal("A1", "").textAt("/id");
        Answer day = herd.post("test-days", TestHerd.testDayJson("A1", "2025-11-12", 27.4));
        herd.put("/animals/" + animal, "*", "{\"identifiers\":[" + TestHerd.animal("NEW") + "]}")
                .expecting(200);
        herd.getAnimal("A1", "").expecting(404);
        herd.getAnimal("A1", "?" + knownAt).expecting(200);
        herd.getAnimal("NEW", "?" + knownAt).expecting(404);
        herd.getAnimal("NEW", "/summary?" + knownAt).expecting(404);
        herd.get("/test-days/" + day.textAt("/id") + "?" + knownAt).expecting(404);
        herd.get("/test-days/" + day.textAt("/id") + "/history?" + knownAt).expecting(404);
        assertThat(herd.get("/animals/" + animal + "/history?" + knownAt)
                        .at("/items")
                        .size())
                .isEqualTo(1);
        assertThat(herd.get("/test-days?" + knownAt).at("/items").size()).isZero();
        herd.get("/summary?knownAt=2000-01-01T00:00:00Z").expecting(404);
        herd.get("/animals?knownAt=2000-01-01T00:00:00Z").expecting(404);
        // the same instant with another offset; a plus sign need not be percent-encoded
        String shifted = Instant.parse(summary.textAt("/knownAt"))
                .atOffset(java.time.ZoneOffset.ofHours(13))
                .toString();
        assertThat(withoutComputedAt(herd.getAnimal("A1", "/summary?asOf=2025-11-30&knownAt=" + shifted)))
                .isEqualTo(withoutComputedAt(summary));
    }

    @Test
    void aComputedAnswerIsNotComputedAgainForWhoHasIt() {
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
        herd.withTestDay("A1", "2025-09-20", 30);
        String address = herd.path("/animals/example.eartag:A1/lactations/current?asOf=2025-11-30");
        Answer first = herd.send("GET", address, null, null).expecting(200);
        String tag = first.header("ETag").orElseThrow();
        assertThat(tag).startsWith("W/\"");
        assertThat(fresh(herd, address, tag)).isEqualTo(304);
        assertThat(fresh(herd, address, "*")).isEqualTo(304);
        assertThat(fresh(herd, address + "&explain=true", tag)).isEqualTo(200);
        assertThat(fresh(herd, herd.path("/animals/example.eartag:A1/lactations/current"), tag))
                .isEqualTo(200);
        herd.withTestDay("A1", "2025-10-20", 28);
        assertThat(fresh(herd, address, tag)).isEqualTo(200);
        String held = address + "&knownAt=" + first.textAt("/knownAt");
        String heldTag = herd.send("GET", held, null, null).header("ETag").orElseThrow();
        herd.withTestDay("A1", "2025-11-20", 26);
        assertThat(fresh(herd, held, heldTag)).isEqualTo(304);
    }

    private static int fresh(TestHerd herd, String address, String tag) {
        return herd.send("GET", address, null, null, Map.of("If-None-Match", tag))
                .status();
    }

    @Test
    void aListHoldsOneLactationAndWithdrawnRecordsIfAskedTo() {
        TestHerd herd = herd();
        Answer lactation = herd.get("/test-days?animal=example.eartag:C2&parity=2&count=true");
        assertThat(lactation.countAt("/total")).isEqualTo(5);
        assertThat(lactation.at("/items").findValuesAsText("date")).allMatch(date -> date.startsWith("2025"));
        assertThat(herd.get("/test-days?animal=example.eartag:C2&parity=1&count=true")
                        .countAt("/total"))
                .isEqualTo(10);
        assertThat(herd.get("/calvings?animal=example.eartag:C2&parity=1&count=true")
                        .countAt("/total"))
                .isEqualTo(1);
        assertThat(herd.get("/test-days?animal=example.eartag:C2&parity=3&count=true")
                        .countAt("/total"))
                .isZero();
        String id = lactation.textAt("/items/0/id");
        herd.delete("/test-days/" + id, "*").expecting(200);
        assertThat(herd.get("/test-days?animal=example.eartag:C2&parity=2&count=true")
                        .countAt("/total"))
                .isEqualTo(4);
        Answer all = herd.get("/test-days?animal=example.eartag:C2&parity=2&count=true&includeWithdrawn=true&limit=2");
        assertThat(all.countAt("/total")).isEqualTo(5);
        assertThat(all.at("/items").size()).isEqualTo(2);
    }

    @Test
    void theListOfHerdsShowsThoseKnownThenUnderTheNamesTheyHad() {
        TestHerd old = TestHerd.make();
        String key = TestHerd.key("read", old.code(), null);
        String before = momentAfter(old.get("").expecting(200));
        String renamed = "{\"code\":\"" + old.code() + "\",\"name\":\"Renamed\",\"timeZone\":\"Europe/Dublin\"}";
        old.put("", "\"1\"", renamed).expecting(200);
        TestHerd young = TestHerd.make();
        String both = TestHerd.key("read", old.code() + " " + young.code(), null);
        String list = "/v1/herds?count=true";
        Answer now = old.withKey(both).send("GET", list, null, null).expecting(200);
        assertThat(now.countAt("/total")).isEqualTo(2);
        assertThat(now.at("/items").findValuesAsText("name")).contains("Renamed");
        Answer then = old.withKey(both)
                .send("GET", list + "&knownAt=" + before, null, null)
                .expecting(200);
        assertThat(then.at("/items").findValuesAsText("name")).containsExactly("Herd " + old.code());
        assertThat(then.countAt("/total")).isEqualTo(1);
        assertThat(old.withKey(key)
                        .send("GET", "/v1/herds?knownAt=2000-01-01T00:00:00Z", null, null)
                        .expecting(200)
                        .at("/items"))
                .isEmpty();
        old.withKey(key)
                .send("GET", "/v1/herds?knownAt=2099-01-01T00:00:00Z", null, null)
                .expecting(400);
    }

    /** An instant after everything that herd has been told. */
    private static String momentAfter(Answer any) {
        assertThat(any.status()).isEqualTo(200);
        java.time.Instant asked = java.time.Instant.now();
        while (!java.time.Instant.now().isAfter(asked.plusMillis(5))) {
            Thread.onSpinWait();
        }
        return asked.plusMillis(2).toString();
    }

    @Test
    void theChangeFeedOfThenEndsWhereItEndedThen() {
        TestHerd herd = TestHerd.make().withAnimal("ASH").withCalving("ASH", "2025-01-10", 1);
        Answer before = herd.get("/changes").expecting(200);
        String knownAt = before.textAt("/changes/1/recordedAt");
        herd.withTestDay("ASH", "2025-02-01", 31);
        herd.post("calvings", "{\"animal\":" + TestHerd.animal("ASH") + ",\"date\":\"2025-01-10\",\"parity\":2}")
                .expecting(200);
        assertThat(herd.get("/changes").at("/changes")).hasSize(4);
        Answer then = herd.get("/changes?knownAt=" + knownAt).expecting(200);
        assertThat(then.json()).isEqualTo(before.json());
        Answer beyond = herd.get("/changes?after=3&knownAt=" + knownAt).expecting(200);
        assertThat(beyond.at("/changes")).isEmpty();
        assertThat(beyond.countAt("/nextAfter")).isEqualTo(3);
        assertThat(beyond.at("/more").asBoolean()).isFalse();
    }

    @Test
    void aRecordOfALaterDayIsNotFoundAsOfAnEarlierOne() {
        TestHerd herd = TestHerd.make().withAnimal("OLD").withAnimal("CALF", ",\"birthDate\":\"2025-03-01\"");
        String id = herd.withTestDay("OLD", "2025-02-01", 31).get("/test-days").textAt("/items/0/id");
        for (String rest : java.util.List.of("/test-days/" + id, "/test-days/" + id + "/history")) {
            herd.get(rest + "?asOf=2025-02-01").expecting(200);
            herd.get(rest + "?asOf=2025-01-31").expecting(404);
            herd.get(rest + "?asOf=31.1.2025").expecting(400);
        }
        herd.getAnimal("CALF", "?asOf=2025-02-28").expecting(404);
        herd.getAnimal("CALF", "?asOf=2025-03-01").expecting(200);
        herd.getAnimal("OLD", "?asOf=2000-01-01").expecting(200);
        assertThat(herd.get("/animals?count=true&asOf=2025-02-28").countAt("/total"))
                .isEqualTo(1);
        assertThat(herd.get("/animals?asOf=2025-02-28").at("/items")).hasSize(1);
        assertThat(herd.get("/animals.csv?asOf=2025-02-28").text())
                .contains("OLD")
                .doesNotContain("CALF");
        assertThat(herd.get("/test-days.csv?asOf=2025-01-31").text().lines()).hasSize(1);
        herd.get("?asOf=2025-01-31").expecting(200);
        herd.get("?asOf=tomorrow").expecting(400);
    }

    @Test
    void whatWasComputedLatelyIsGivenAgainUntilAnythingOfTheHerdChanges() {
        TestHerd herd = TestHerd.make()
                .withAnimal("ASH")
                .withCalving("ASH", "2025-01-10", 1)
                .withTestDay("ASH", "2025-02-01", 31);
        for (String path : java.util.List.of(
                "/summary?asOf=2025-03-01", "/animals/example.eartag%3AASH/summary?asOf=2025-03-01")) {
            Answer first = herd.get(path).expecting(200);
            assertThat(herd.get(path).expecting(200).text()).as(path).isEqualTo(first.text());
            // who may not see the herd does not see what was kept either
            herd.withKey(TestHerd.key("read", TestHerd.make().code(), null))
                    .get(path)
                    .expecting(404);
            herd.withKey(TestHerd.key("write", herd.code(), null)).get(path).expecting(403);
            Answer other = herd.get(path.replace("03-01", "03-02")).expecting(200);
            assertThat(other.textAt("/asOf")).isEqualTo("2025-03-02");
            herd.withTestDay("ASH", path.startsWith("/s") ? "2025-02-10" : "2025-02-11", 33);
            Answer later = herd.get(path).expecting(200);
            assertThat(later.textAt("/knownAt")).isGreaterThan(first.textAt("/knownAt"));
            assertThat(later.header("ETag")).isNotEqualTo(first.header("ETag"));
        }
    }
}
