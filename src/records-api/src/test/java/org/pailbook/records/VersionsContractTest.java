package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One known record of any kind: replaced, patched, withdrawn, revived, and all of it in its history. */
@QuarkusTest
class VersionsContractTest {
    @Inject
    DataSource database;

    /**
     * A kind of record for the tests that hold for all of them.
     *
     * @param body a good one, of animal A1
     * @param other another good one with the same natural key
     * @param patch what makes the second of the first
     * @param member that differs
     */
    record Kind(String path, String body, String other, String patch, String member) {
        @Override
        public String toString() {
            return path;
        }
    }

    /** A new kind gets its line here or among the {@link RecordExamples}. */
    static Stream<Kind> kinds() {
        return Stream.concat(firstKinds(), RecordExamples.ALL.stream().map(VersionsContractTest::kind));
    }

    private static Kind kind(RecordExamples example) {
        JsonNode changed = json("{" + example.changed() + "}");
        JsonNode was = json(example.json());
        String member = was.properties().stream()
                .filter(one -> !one.getValue().equals(changed.get(one.getKey())))
                .findFirst()
                .orElseThrow()
                .getKey();
        return new Kind(
                example.kind(),
                example.json(),
                changed.toString(),
                "{\"" + member + "\":" + changed.get(member) + "}",
                member);
    }

    private static JsonNode json(String text) {
        return new Answer(200, Map.of(), text).json();
    }

    private static Stream<Kind> firstKinds() {
        return Stream.of(
                new Kind(
                        "animals",
                        "{\"identifiers\":[" + TestHerd.animal("B1") + "],\"name\":\"Bonina\"}",
                        "{\"identifiers\":[" + TestHerd.animal("B1") + "],\"name\":\"Malhada\"}",
                        "{\"name\":\"Malhada\"}",
                        "name"),
                event("test-days", "2025-11-12", "milkKg", "27.4", "24.7"),
                event("calvings", "2026-08-19", "ease", "1", "3"),
                event("departures", "2026-09-01", "kind", "\"sale\"", "\"death\""),
                event("dry-offs", "2026-06-19", "source", "\"parlour\"", "\"office\""));
    }

    private static Kind event(String path, String date, String member, String value, String otherValue) {
        String start = "{\"animal\":" + TestHerd.animal("A1") + ",\"date\":\"" + date + "\",\"" + member + "\":";
        return new Kind(
                path, start + value + "}", start + otherValue + "}", "{\"" + member + "\":" + otherValue + "}", member);
    }

    private static TestHerd herdWithCow() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    private static String day(String date, String members) {
        return "{\"animal\":" + TestHerd.animal("A1") + ",\"date\":\"" + date + "\"" + members + "}";
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aKnownRecordIsReplacedWithdrawnAndRevivedAndItsHistoryTellsAllOfIt(Kind kind) {
        TestHerd herd = herdWithCow();
        Answer made = herd.post(kind.path(), kind.body()).expecting(201);
        String one = "/" + kind.path() + "/" + made.textAt("/id");

        Answer replaced = herd.put(one, "\"1\"", kind.other()).expecting(200);
        assertThat(replaced.textAt("/outcome")).isEqualTo("updated");
        assertThat(replaced.countAt("/version")).isEqualTo(2);
        assertThat(replaced.header("ETag")).contains("\"2\"");
        assertThat(replaced.textAt("/id")).isEqualTo(made.textAt("/id"));

        Answer gone = herd.delete(one, "\"2\"").expecting(200);
        assertThat(gone.textAt("/outcome")).isEqualTo("withdrawn");
        assertThat(gone.header("ETag")).contains("\"3\"");
        herd.get(one).expecting(404);
        herd.delete(one, "*").expecting(404);
        herd.put(one, "*", kind.body()).expecting(404);
        assertThat(herd.get("/" + kind.path()).at("/items").findValuesAsText("id"))
                .doesNotContain(made.textAt("/id"));

        Answer back = herd.post(kind.path(), kind.body()).expecting(200);
        assertThat(back.textAt("/id")).isEqualTo(made.textAt("/id"));
        assertThat(back.countAt("/version")).isEqualTo(4);
        assertThat(back.findingCodes()).contains("revived");

        JsonNode history = herd.get(one + "/history").expecting(200).at("/items");
        assertThat(texts(history, "action")).containsExactly("created", "updated", "withdrawn", "revived");
        assertThat(texts(history, "version")).containsExactly("1", "2", "3", "4");
        assertThat(texts(history, "recordedAt").stream().map(Instant::parse).toList())
                .isSorted()
                .doesNotHaveDuplicates();
        assertThat(texts(history, "recordedBy"))
                .doesNotContain("")
                .containsOnly(texts(history, "recordedBy").get(0));
        assertThat(history.at("/0/record")).isEqualTo(made.at("/record"));
        assertThat(history.at("/1/record")).isEqualTo(replaced.at("/record"));
        assertThat(history.at("/2/record")).isEqualTo(replaced.at("/record"));
        assertThat(history.at("/3/record")).isEqualTo(back.at("/record"));
        assertThat(history.at("/1/record/" + kind.member())).isNotEqualTo(history.at("/0/record/" + kind.member()));
    }

    private static List<String> texts(JsonNode items, String member) {
        List<String> texts = new ArrayList<>();
        items.forEach(item -> texts.add(item.path(member).asText()));
        return texts;
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aPatchChangesWhatItNamesAndNothingElse(Kind kind) {
        TestHerd herd = herdWithCow();
        Answer made = herd.post(kind.path(), kind.body()).expecting(201);
        String one = "/" + kind.path() + "/" + made.textAt("/id");
        Answer patched = herd.patch(one, "\"1\"", kind.patch()).expecting(200);
        assertThat(patched.countAt("/version")).isEqualTo(2);
        assertThat(patched.at("/record/" + kind.member()))
                .isEqualTo(json(kind.other()).at("/" + kind.member()));
        assertThat(patched.at("/record/" + kind.member())).isNotEqualTo(made.at("/record/" + kind.member()));
        made.at("/record").properties().forEach(member -> {
            if (!member.getKey().equals(kind.member())) {
                assertThat(patched.at("/record").get(member.getKey())).isEqualTo(member.getValue());
            }
        });
        assertThat(herd.get(one).at("/record")).isEqualTo(patched.at("/record"));
        Answer same = herd.patch(one, "\"2\"", kind.patch()).expecting(200);
        assertThat(same.textAt("/outcome")).isEqualTo("unchanged");
        assertThat(same.header("ETag")).contains("\"2\"");
        assertThat(herd.patch(one, "\"2\"", "{}").expecting(200).textAt("/outcome"))
                .isEqualTo("unchanged");
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aChangeMustNameTheVersionItWasMadeFrom(Kind kind) {
        TestHerd herd = herdWithCow();
        String one = "/" + kind.path() + "/"
                + herd.post(kind.path(), kind.body()).expecting(201).textAt("/id");
        herd.put(one, "\"1\"", kind.other()).expecting(200);
        StoredRows before = StoredRows.in(database);
        for (String stale : List.of("\"1\"", "\"3\"", "W/\"2\"", "\"1\", \"3\"")) {
            for (Answer refused :
                    List.of(herd.put(one, stale, kind.body()), herd.patch(one, stale, "{}"), herd.delete(one, stale))) {
                refused.expecting(412);
                assertThat(refused.textAt("/code")).isEqualTo("version-mismatch");
                assertThat(refused.header("ETag")).contains("\"2\"");
            }
        }
        for (String method : List.of("PUT", "PATCH", "DELETE")) {
            Answer refused = herd.send(method, herd.path(one), TestHerd.JSON, kind.body())
                    .expecting(428);
            assertThat(refused.textAt("/code")).isEqualTo("precondition-required");
        }
        assertThat(StoredRows.in(database)).isEqualTo(before);
        herd.patch(one, "\"1\", \"2\"", "{}").expecting(200);
        herd.delete(one, "*").expecting(200);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void whoHasTheVersionInForceIsToldSoWithoutABody(Kind kind) {
        TestHerd herd = herdWithCow();
        String one = "/" + kind.path() + "/"
                + herd.post(kind.path(), kind.body()).expecting(201).textAt("/id");
        for (String have : List.of("\"1\"", "W/\"1\"", "\"7\", \"1\"", "*")) {
            Answer known = herd.send("GET", herd.path(one), null, null, Map.of("If-None-Match", have))
                    .expecting(304);
            assertThat(known.text()).isEmpty();
            assertThat(known.header("ETag")).contains("\"1\"");
        }
        herd.put(one, "\"1\"", kind.other()).expecting(200);
        herd.send("GET", herd.path(one), null, null, Map.of("If-None-Match", "\"1\""))
                .expecting(200);
    }

    @Test
    void nullClearsAMemberAndAnObjectIsMergedIntoTheOneThatIsThere() {
        TestHerd herd = herdWithCow().withAnimal("A2");
        String one = "/test-days/"
                + herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4,\"fatPct\":4.12,\"source\":\"scale\""))
                        .textAt("/id");
        Answer cleared = herd.patch(one, "\"1\"", "{\"fatPct\":null}").expecting(200);
        assertThat(cleared.at("/record/fatPct").isMissingNode()).isTrue();
        assertThat(cleared.numberAt("/record/milkKg")).isEqualTo(27.4);
        assertThat(cleared.textAt("/record/source")).isEqualTo("scale");
        // the scheme stays as it was shown: RFC 7396 merges objects member by member
        Answer moved = herd.patch(one, "\"2\"", "{\"animal\":{\"id\":\"A2\"}}").expecting(200);
        assertThat(moved.textAt("/record/animal/scheme")).isEqualTo(TestHerd.SCHEME);
        assertThat(moved.textAt("/record/animal/id")).isEqualTo("A2");
        assertThat(herd.get("/test-days?animal=example.eartag:A1").at("/items").size())
                .isZero();
    }

    @Test
    void aChangeIsCheckedLikeAPost() {
        TestHerd herd = herdWithCow();
        herd.withTestDay("A1", "2025-10-12", 30);
        String one = "/test-days/"
                + herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4")).textAt("/id");
        assertThat(herd.patch(one, "*", "{\"fatPct\":38}").expecting(422).textAt("/errors/0/code"))
                .isEqualTo("percent-unit-suspect");
        assertThat(herd.patch(one, "*", "{\"milkKg\":null}").expecting(422).textAt("/errors/0/code"))
                .isEqualTo("nothing-measured");
        assertThat(herd.put(one, "*", day("2025-10-12", ",\"milkKg\":27.4"))
                        .expecting(409)
                        .textAt("/code"))
                .isEqualTo("key-conflict");
        assertThat(herd.patch(one, "*", "{\"fatPct\":1.1}").expecting(200).findingCodes())
                .isNotEmpty();
    }

    @Test
    void aReplacedSourceKeyIsGivenFreeAndAPatchedRecordIsStillFoundByIt() {
        TestHerd herd = herdWithCow();
        String keyed = ",\"milkKg\":27.4,\"source\":\"scale\",\"sourceId\":\"td-1\"";
        String id = herd.post("test-days", day("2025-11-12", keyed)).textAt("/id");
        herd.patch("/test-days/" + id, "\"1\"", "{\"date\":\"2025-11-13\"}").expecting(200);
        Answer resent = herd.post("test-days", day("2025-11-12", keyed)).expecting(200);
        assertThat(resent.textAt("/id")).isEqualTo(id);
        assertThat(resent.textAt("/record/date")).isEqualTo("2025-11-12");
        herd.put("/test-days/" + id, "\"3\"", day("2025-11-12", ",\"milkKg\":27.4"))
                .expecting(200);
        assertThat(herd.post("test-days", day("2025-11-14", keyed))
                        .expecting(201)
                        .textAt("/id"))
                .isNotEqualTo(id);
    }

    @Test
    void anIdentifierIsTakenAwayByAReplacementOnly() {
        TestHerd herd = TestHerd.make();
        String both = "{\"identifiers\":[" + TestHerd.animal("B1") + "," + TestHerd.animal("B2") + "]}";
        String id = herd.post("animals", both).expecting(201).textAt("/id");
        assertThat(herd.post("animals", "{\"identifiers\":[" + TestHerd.animal("B1") + "]}")
                        .findingCodes())
                .contains("identifiers-kept");
        herd.put("/animals/" + id, "*", "{\"identifiers\":[" + TestHerd.animal("B1") + "]}")
                .expecting(200);
        herd.getAnimal("B2", "").expecting(404);
        herd.getAnimal("B1", "").expecting(200);
    }

    @Test
    void identifiersGatherToTenAndEveryVersionShowsItsOwn() {
        TestHerd herd = TestHerd.make();
        String id = herd.post("animals", "{\"identifiers\":[" + TestHerd.animal("M0") + "]}")
                .expecting(201)
                .textAt("/id");
        for (int more = 1; more < 10; more++) {
            herd.post(
                            "animals",
                            "{\"identifiers\":[" + TestHerd.animal("M0") + "," + TestHerd.animal("M" + more) + "]}")
                    .expecting(200);
        }
        Answer refused = herd.post(
                "animals", "{\"identifiers\":[" + TestHerd.animal("M0") + "," + TestHerd.animal("M10") + "]}");
        assertThat(refused.expecting(422).textAt("/errors/0/code")).isEqualTo("too-many");
        assertThat(refused.text()).contains("put the record").contains("/identifiers");
        herd.getAnimal("M10", "").expecting(404);
        JsonNode versions =
                herd.get("/animals/" + id + "/history").expecting(200).at("/items");
        assertThat(versions).hasSize(10);
        for (int version = 0; version < 10; version++) {
            assertThat(versions.get(version).at("/record/identifiers")).hasSize(version + 1);
        }
    }

    @Test
    void aHerdGetsAnotherNameOrZoneAndKeepsWhatItHad() {
        TestHerd herd = TestHerd.make();
        assertThat(herd.get("").header("ETag")).contains("\"1\"");
        Answer renamed = herd.patch("", "\"1\"", "{\"name\":\"Upper Field\"}").expecting(200);
        assertThat(renamed.header("ETag")).contains("\"2\"");
        assertThat(renamed.textAt("/timeZone")).isEqualTo("Europe/Dublin");
        herd.put(
                        "",
                        "\"2\"",
                        "{\"code\":\"%s\",\"name\":\"Upper Field\",\"timeZone\":\"Europe/Lisbon\"}"
                                .formatted(herd.code()))
                .expecting(200);
        assertThat(herd.patch("", "\"1\"", "{}").expecting(412).header("ETag")).contains("\"3\"");
        assertThat(herd.patch("", "*", "{\"code\":\"other\"}").expecting(422).textAt("/errors/0/code"))
                .isEqualTo("code-fixed");
        JsonNode history = herd.get("/history").expecting(200).at("/items");
        assertThat(texts(history, "action")).containsExactly("created", "updated", "updated");
        assertThat(history.findValuesAsText("timeZone"))
                .containsExactly("Europe/Dublin", "Europe/Dublin", "Europe/Lisbon");
        herd.send("GET", herd.path(""), null, null, Map.of("If-None-Match", "\"3\""))
                .expecting(304);
    }

    @Test
    void ofTwoWhoChangeTheSameVersionAtOnceOneIsRefused() throws Exception {
        TestHerd herd = herdWithCow();
        String one = "/test-days/"
                + herd.post("test-days", day("2025-11-12", ",\"milkKg\":20")).textAt("/id");
        ExecutorService tools = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Integer>> changes = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                String patch = "{\"milkKg\":" + (21 + i) + "}";
                changes.add(() -> herd.patch(one, "\"1\"", patch).status());
            }
            List<Integer> statuses = new ArrayList<>();
            for (Future<Integer> done : tools.invokeAll(changes)) {
                statuses.add(done.get());
            }
            assertThat(statuses).containsOnlyOnce(200);
            assertThat(statuses.stream().filter(status -> status == 412)).hasSize(7);
        } finally {
            tools.shutdownNow();
        }
    }
}
