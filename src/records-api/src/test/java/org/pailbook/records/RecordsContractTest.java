package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** What becomes of good records: kept once, changed with history, listed, and seen only by who may. */
@QuarkusTest
class RecordsContractTest {
    @Inject
    DataSource database;

    private static TestHerd herdWithCow() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    private static String day(String date, String members) {
        return "{\"animal\":" + TestHerd.animal("A1") + ",\"date\":\"" + date + "\"" + members + "}";
    }

    @Test
    void aNewRecordIsAnsweredWithItsAddressVersionAndDaysInMilk() {
        TestHerd herd = herdWithCow();
        Answer answer = herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4,\"sccThousandPerMl\":84"))
                .expecting(201);
        assertThat(answer.textAt("/outcome")).isEqualTo("created");
        assertThat(answer.countAt("/version")).isEqualTo(1);
        // 19 August to 12 November is 85 days, the calving day being day 0; counted by hand
        assertThat(answer.countAt("/daysInMilk")).isEqualTo(85);
        assertThat(answer.header("ETag")).contains("\"1\"");
        String address = answer.header("Location").orElseThrow();
        // without scheme and host, which only the caller knows behind a proxy (RFC 9110, section 10.2.2)
        assertThat(address).isEqualTo(herd.path("/test-days/" + answer.textAt("/id")));
        Answer fetched = herd.get("/test-days/" + answer.textAt("/id")).expecting(200);
        assertThat(fetched.numberAt("/record/milkKg")).isEqualTo(27.4);
        assertThat(fetched.at("/record/fatPct").isMissingNode()).isTrue();
        assertThat(fetched.at("/record")).isEqualTo(answer.at("/record"));
    }

    @Test
    void sendingTheSameAgainChangesNothing() {
        TestHerd herd = herdWithCow();
        String body = day("2025-11-12", ",\"milkKg\":27.4,\"source\":\"scale\",\"sourceId\":\"7\"");
        Answer first = herd.post("test-days", body).expecting(201);
        StoredRows before = StoredRows.in(database);
        Answer second = herd.post("test-days", body).expecting(200);
        assertThat(second.textAt("/outcome")).isEqualTo("unchanged");
        assertThat(second.textAt("/id")).isEqualTo(first.textAt("/id"));
        assertThat(second.countAt("/version")).isEqualTo(1);
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void aChangedRecordGetsAVersionMoreAndTheOldOneIsKeptWhole() throws SQLException {
        TestHerd herd = herdWithCow();
        Answer first = herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4,\"fatPct\":4.1"));
        Answer second = herd.post("test-days", day("2025-11-12", ",\"milkKg\":24.7,\"fatPct\":4.1"))
                .expecting(200);
        assertThat(second.textAt("/outcome")).isEqualTo("updated");
        assertThat(second.countAt("/version")).isEqualTo(2);
        assertThat(second.textAt("/id")).isEqualTo(first.textAt("/id"));
        assertThat(second.header("ETag")).contains("\"2\"");
        assertThat(herd.get("/test-days/" + first.textAt("/id")).numberAt("/record/milkKg"))
                .isEqualTo(24.7);
        assertThat(keptVersions(first.textAt("/id")))
                .singleElement()
                .asString()
                .contains("\"milkKg\":27.4", "\"fatPct\":4.1", "2025-11-12");
    }

    private List<String> keptVersions(String id) throws SQLException {
        List<String> contents = new ArrayList<>();
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(
                        "select content from superseded_version where record_id = ? order by version")) {
            query.setString(1, id);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    contents.add(rows.getString(1));
                }
            }
        }
        return contents;
    }

    @Test
    void theSourcesOwnKeyMovesARecordToAnotherDay() {
        TestHerd herd = herdWithCow();
        String from = ",\"milkKg\":27.4,\"source\":\"scale\",\"sourceId\":\"td-1\"";
        Answer first = herd.post("test-days", day("2025-11-12", from)).expecting(201);
        Answer moved = herd.post("test-days", day("2025-11-13", from)).expecting(200);
        assertThat(moved.textAt("/outcome")).isEqualTo("updated");
        assertThat(moved.textAt("/id")).isEqualTo(first.textAt("/id"));
        assertThat(herd.get("/test-days").at("/items").findValuesAsText("date")).containsExactly("2025-11-13");
    }

    @Test
    void keysOfTwoRecordsInOneAreAConflictAndChangeNeither() {
        TestHerd herd = herdWithCow();
        herd.post("test-days", day("2025-10-12", ",\"milkKg\":30,\"source\":\"scale\",\"sourceId\":\"td-1\""))
                .expecting(201);
        herd.post("test-days", day("2025-11-12", ",\"milkKg\":27")).expecting(201);
        StoredRows before = StoredRows.in(database);
        Answer answer = herd.post(
                        "test-days", day("2025-11-12", ",\"milkKg\":26,\"source\":\"scale\",\"sourceId\":\"td-1\""))
                .expecting(409);
        assertThat(answer.textAt("/code")).isEqualTo("key-conflict");
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void anotherSourceOverwritesWithAWarningThatNamesBoth() {
        TestHerd herd = herdWithCow();
        herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4,\"source\":\"scale\""))
                .expecting(201);
        Answer answer = herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.9,\"source\":\"laboratory\""))
                .expecting(200);
        assertThat(answer.findingCodes()).contains("other-source-overwritten");
        assertThat(answer.text()).contains("replaces a version from scale by one from laboratory");
    }

    @Test
    void aValueNoLongerGivenIsWarnedOfWithTheValueThatWasThere() {
        TestHerd herd = herdWithCow();
        herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4,\"fatPct\":4.12"))
                .expecting(201);
        Answer answer =
                herd.post("test-days", day("2025-11-12", ",\"milkKg\":27.4")).expecting(200);
        JsonNode warning = answer.at("/findings/0");
        assertThat(warning.path("code").asText()).isEqualTo("value-no-longer-given");
        assertThat(warning.path("pointer").asText()).isEqualTo("/fatPct");
        assertThat(warning.path("value").asText()).isEqualTo("4.12");
        assertThat(answer.at("/record/fatPct").isMissingNode()).isTrue();
    }

    @Test
    void ofTwoRowsWithOneKeyInOneFileTheLastIsTakenAndTheFirstSaysSo() {
        TestHerd herd = herdWithCow();
        Answer answer = herd.bulk(
                        "test-days",
                        TestHerd.JSON,
                        "{\"rows\":[" + day("2025-11-12", ",\"milkKg\":27.4") + ","
                                + day("2025-11-12", ",\"milkKg\":28.4") + "]}")
                .expecting(200);
        assertThat(counts(answer)).isEqualTo(Map.of("created", 1, "superseded", 1));
        assertThat(answer.countAt("/rows/0/row")).isEqualTo(1);
        assertThat(answer.textAt("/rows/0/findings/0/code")).isEqualTo("superseded-in-request");
        assertThat(herd.get("/test-days").numberAt("/items/0/record/milkKg")).isEqualTo(28.4);
    }

    /** Outcomes that occurred, with how often. */
    private static Map<String, Integer> counts(Answer answer) {
        Map<String, Integer> counts = new java.util.HashMap<>();
        for (String outcome : List.of("created", "updated", "unchanged", "superseded", "refused")) {
            if (answer.countAt("/" + outcome) > 0) {
                counts.put(outcome, answer.countAt("/" + outcome));
            }
        }
        return counts;
    }

    @Test
    void aListComesInPagesThatMissNothingAndRepeatNothing() {
        TestHerd herd = herdWithCow().withAnimal("A2");
        for (int month = 1; month <= 5; month++) {
            herd.withTestDay("A1", "2026-0" + month + "-10", 25);
            herd.withTestDay("A2", "2026-0" + month + "-10", 20);
        }
        List<String> seen = new ArrayList<>();
        List<String> dates = new ArrayList<>();
        String address = herd.path("/test-days?limit=3");
        int pages = 0;
        while (address != null) {
            Answer page = herd.send("GET", address, null, null).expecting(200);
            assertThat(page.at("/items").size()).isLessThanOrEqualTo(3);
            page.at("/items").forEach(item -> {
                seen.add(item.path("id").asText());
                dates.add(item.at("/record/date").asText());
            });
            address = page.textAt("/next");
            pages++;
        }
        assertThat(pages).isEqualTo(4);
        assertThat(seen).hasSize(10).doesNotHaveDuplicates();
        assertThat(dates).isSorted();
    }

    @Test
    void animalsAndHerdsComeInPagesToo() {
        TestHerd herd = TestHerd.make().withAnimal("B1").withAnimal("B2").withAnimal("B3");
        Answer first = herd.get("/animals?limit=2").expecting(200);
        assertThat(first.at("/items").size()).isEqualTo(2);
        Answer rest = herd.send("GET", first.textAt("/next"), null, null).expecting(200);
        assertThat(rest.at("/items").size()).isEqualTo(1);
        assertThat(rest.at("/next").isMissingNode()).isTrue();
        TestHerd second = TestHerd.make();
        TestHerd both = herd.withKey(TestHerd.key("read", herd.code() + " " + second.code(), null));
        Answer herds = both.send("GET", "/v1/herds?limit=1", null, null).expecting(200);
        Answer next = both.send("GET", herds.textAt("/next"), null, null).expecting(200);
        assertThat(List.of(herds.textAt("/items/0/code"), next.textAt("/items/0/code")))
                .containsExactlyInAnyOrder(herd.code(), second.code());
        assertThat(next.at("/next").isMissingNode()).isTrue();
    }

    @Test
    void aListIsCutByDaysAsOfDayAndAnimal() {
        TestHerd herd = herdWithCow().withAnimal("A2");
        herd.withTestDay("A1", "2026-01-10", 25).withTestDay("A1", "2026-02-10", 24);
        herd.withTestDay("A2", "2026-02-10", 20).withTestDay("A1", "2026-03-10", 23);
        assertThat(dates(herd, "?from=2026-02-10")).containsExactly("2026-02-10", "2026-02-10", "2026-03-10");
        assertThat(dates(herd, "?to=2026-02-09")).containsExactly("2026-01-10");
        assertThat(dates(herd, "?from=2026-02-10&to=2026-02-10")).hasSize(2);
        assertThat(dates(herd, "?asOf=2026-02-10")).containsExactly("2026-01-10", "2026-02-10", "2026-02-10");
        assertThat(dates(herd, "?animal=example.eartag:A1&asOf=2026-02-28"))
                .containsExactly("2026-01-10", "2026-02-10");
        assertThat(dates(herd, "?from=2026-03-01&to=2026-02-01")).isEmpty();
    }

    private static List<String> dates(TestHerd herd, String query) {
        return herd.get("/test-days" + query).expecting(200).at("/items").findValuesAsText("date");
    }

    @Test
    void oneTableGivesTheSameRecordsWhicheverWayItIsWritten() {
        String json = day("2025-11-12", ",\"milkKg\":27.4,\"fatPct\":4.12,\"sccThousandPerMl\":84");
        String second = day("2025-12-12", ",\"milkKg\":25");
        List<Map.Entry<String, String>> ways = List.of(
                Map.entry(TestHerd.JSON, "{\"rows\":[" + json + "," + second + "]}"),
                Map.entry(TestHerd.JSON, "[" + json + "," + second + "]"),
                Map.entry(TestHerd.NDJSON, json + "\r\n\n" + second),
                Map.entry(TestHerd.CSV, """
                        animal_scheme,animal_id,date,milk_kg,fat_pct,scc_thousand_per_ml
                        example.eartag,A1,2025-11-12,27.4,4.12,84
                        example.eartag,A1,2025-12-12,25,,
                        """),
                Map.entry(TestHerd.CSV + "; charset=utf-8", """
                        \uFEFFdate;fat_pct;milk_kg;animal_id;scc_thousand_per_ml;animal_scheme\r
                        2025-11-12;4,12;27,40;A1;84;example.eartag\r
                        2025-12-12;;25,0;"A1";;example.eartag\r
                        """));
        List<String> expected = null;
        for (Map.Entry<String, String> way : ways) {
            TestHerd herd = herdWithCow();
            Answer answer = herd.bulk("test-days", way.getKey(), way.getValue()).expecting(200);
            assertThat(counts(answer)).as(way.getValue()).isEqualTo(Map.of("created", 2));
            List<String> records = new ArrayList<>();
            herd.get("/test-days")
                    .at("/items")
                    .forEach(item -> records.add(item.path("record").toString()));
            expected = expected == null ? records : expected;
            assertThat(records).isEqualTo(expected);
        }
        assertThat(expected.get(0)).contains("\"milkKg\":27.4,\"fatPct\":4.12", "\"sccThousandPerMl\":84");
    }

    @Test
    void aDryRunTellsWhatWouldHappenAndStoresNothing() {
        TestHerd herd = herdWithCow().withTestDay("A1", "2025-10-12", 30);
        StoredRows before = StoredRows.in(database);
        Answer answer = herd.bulk(
                        "test-days",
                        TestHerd.JSON,
                        "[" + day("2025-10-12", ",\"milkKg\":30") + "," + day("2025-11-12", ",\"milkKg\":27") + ","
                                + day("2025-12-12", ",\"milkKg\":-1") + "]",
                        "?dryRun=true&report=all")
                .expecting(200);
        assertThat(counts(answer)).isEqualTo(Map.of("unchanged", 1, "created", 1, "refused", 1));
        assertThat(answer.at("/dryRun").asBoolean()).isTrue();
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void aFullReportTellsOfEveryRowInTheOrderSent() {
        TestHerd herd = herdWithCow();
        Answer answer = herd.bulk(
                        "test-days",
                        TestHerd.JSON,
                        "[" + day("2025-12-12", ",\"milkKg\":26") + "," + day("2025-11-12", ",\"milkKg\":27") + "]",
                        "?report=all")
                .expecting(200);
        assertThat(answer.at("/rows").findValuesAsText("row")).containsExactly("1", "2");
        assertThat(answer.at("/rows").findValuesAsText("outcome")).containsExactly("created", "created");
        String id = answer.textAt("/rows/0/id");
        assertThat(herd.get("/test-days/" + id).textAt("/record/date")).isEqualTo("2025-12-12");
    }

    @Test
    void anAnimalThatWouldHaveMoreThanTenIdentifiersIsRefusedAndKeepsThoseItHas() {
        TestHerd herd = TestHerd.make();
        herd.post("animals", identified(0, 6)).expecting(201);
        herd.post("animals", identified(4, 10)).expecting(200);
        Answer more = herd.post("animals", identified(9, 11)).expecting(422);
        assertThat(more.textAt("/errors/0/code")).as(more.text()).isEqualTo("too-many");
        Answer kept = herd.getAnimal("N9", "").expecting(200);
        assertThat(kept.at("/record/identifiers")).hasSize(10);
        assertThat(herd.patch("/animals/" + kept.textAt("/id"), "\"2\"", "{\"name\":\"Mimosa\"}")
                        .expecting(200)
                        .at("/record/identifiers"))
                .hasSize(10);
    }

    private static String identified(int from, int to) {
        return IntStream.range(from, to)
                .mapToObj(n -> TestHerd.animal("N" + n))
                .collect(Collectors.joining(",", "{\"identifiers\":[", "]}"));
    }

    @Test
    void anAnimalIsFoundByAnyOfItsIdentifiersAndKeepsThoseNotSentAgain() {
        TestHerd herd = TestHerd.make();
        String two = "{\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"A1\"},"
                + "{\"scheme\":\"urn:example:chip\",\"id\":\"985\"}],\"name\":\"Bonina\"}";
        Answer made = herd.post("animals", two).expecting(201);
        assertThat(herd.get("/animals/urn%3Aexample%3Achip%3A985").textAt("/id"))
                .isEqualTo(made.textAt("/id"));
        Answer renamed = herd.post(
                        "animals",
                        "{\"identifiers\":[{\"scheme\":\"urn:example:chip\",\"id\":\"985\"}],"
                                + "\"name\":\"Bonina II\"}")
                .expecting(200);
        assertThat(renamed.textAt("/id")).isEqualTo(made.textAt("/id"));
        assertThat(renamed.findingCodes()).containsExactly("identifiers-kept");
        assertThat(herd.getAnimal("A1", "").textAt("/record/name")).isEqualTo("Bonina II");
        Answer day = herd.post(
                        "test-days",
                        "{\"animal\":{\"scheme\":\"urn:example:chip\",\"id\":\"985\"},\"date\":\"2025-11-12\",\"milkKg\":27}")
                .expecting(201);
        Answer byOurId = herd.post(
                        "test-days",
                        "{\"animal\":{\"id\":\"" + made.textAt("/id") + "\"},\"date\":\"2025-11-12\",\"milkKg\":27}")
                .expecting(200);
        assertThat(byOurId.textAt("/id")).isEqualTo(day.textAt("/id"));
        assertThat(byOurId.textAt("/outcome")).isEqualTo("unchanged");
    }

    @Test
    void eightSendersOfOneRowMakeOneRecordAndSevenHearThatNothingChanged() throws Exception {
        TestHerd herd = herdWithCow();
        String body = day("2025-11-12", ",\"milkKg\":27.4");
        ExecutorService senders = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Answer>> same = Collections.nCopies(8, () -> herd.post("test-days", body));
            List<String> outcomes = new ArrayList<>();
            for (Future<Answer> answer : senders.invokeAll(same)) {
                outcomes.add(answer.get().textAt("/outcome"));
            }
            assertThat(outcomes).filteredOn("created"::equals).hasSize(1);
            assertThat(outcomes).filteredOn("unchanged"::equals).hasSize(7);
        } finally {
            senders.shutdownNow();
        }
        assertThat(herd.get("/test-days").at("/items").size()).isEqualTo(1);
    }

    @Test
    void aKeyOfAnotherHerdSeesNothingOfThisOne() {
        TestHerd herd = herdWithCow();
        TestHerd other = TestHerd.make();
        TestHerd stranger = herd.withKey(TestHerd.key("read write", other.code(), null));
        stranger.get("").expecting(404);
        stranger.get("/animals").expecting(404);
        stranger.post("test-days", day("2025-11-12", ",\"milkKg\":27")).expecting(404);
        Answer list = stranger.send("GET", "/v1/herds", null, null).expecting(200);
        assertThat(list.at("/items").findValuesAsText("code")).containsExactly(other.code());
    }

    @Test
    void aKeyWorksAsBearerAndAsBasicPasswordWithAnyName() {
        TestHerd herd = TestHerd.make();
        String key = TestHerd.key("read", herd.code(), "2099-12-31");
        String pair = Base64.getEncoder().encodeToString(("sheet:" + key).getBytes(StandardCharsets.UTF_8));
        for (String header : List.of("Bearer " + key, "bearer " + key, "Basic " + pair)) {
            Answer me = RawRequest.get("/v1/me").keyed("Authorization", header).send(Map.of());
            assertThat(me.expecting(200).textAt("/herds/0")).isEqualTo(herd.code());
            assertThat(me.textAt("/scopes/0")).isEqualTo("read");
        }
    }

    @Test
    void theTextOfAKeyIsShownOnceAndNeverAgain() {
        Answer made = TestHerd.newKey("read", "*", null).expecting(201);
        String key = made.textAt("/key");
        assertThat(key).matches("pb_[0-9A-Za-z]{8}_[0-9A-Za-z]{43}");
        Answer list = RawRequest.get("/v1/keys")
                .send(Map.of("admin", DatabaseForTests.ADMIN_KEY))
                .expecting(200);
        assertThat(list.at("/items").findValuesAsText("id")).contains(made.textAt("/id"));
        assertThat(list.text()).doesNotContain(key, key.substring(12));
    }

    /** Kiritimati is 25 hours ahead of Pago Pago, so its today is always to come there. */
    @Test
    void todayIsTheHerdsOwnDayAndNotTheServers() {
        LocalDate before = LocalDate.now(ZoneId.of("Pacific/Kiritimati"));
        TestHerd ahead = TestHerd.inZone("Pacific/Kiritimati").withAnimal("A1");
        TestHerd behind = TestHerd.inZone("Pacific/Pago_Pago").withAnimal("A1");
        String shownAhead = ahead.get("/summary").textAt("/asOf");
        String shownBehind = behind.get("/summary").textAt("/asOf");
        assertThat(LocalDate.parse(shownAhead)).isBetween(before, before.plusDays(1));
        assertThat(LocalDate.parse(shownBehind)).isBefore(LocalDate.parse(shownAhead));
        ahead.post("test-days", day(shownAhead, ",\"milkKg\":27")).expecting(201);
        Answer refused =
                behind.post("test-days", day(shownAhead, ",\"milkKg\":27")).expecting(422);
        assertThat(refused.textAt("/errors/0/code")).isEqualTo("date-in-future");
        behind.post("test-days", day(shownBehind, ",\"milkKg\":27")).expecting(201);
    }

    @Test
    void aHerdInAucklandTakesATestOfTheDayItHasThere() {
        TestHerd herd = TestHerd.inZone("Pacific/Auckland").withAnimal("A1");
        LocalDate before = LocalDate.now(ZoneId.of("Pacific/Auckland"));
        herd.post("test-days", day(before.toString(), ",\"milkKg\":27")).expecting(201);
        herd.post("test-days", day(before.plusDays(2).toString(), ",\"milkKg\":27"))
                .expecting(422);
    }
}
