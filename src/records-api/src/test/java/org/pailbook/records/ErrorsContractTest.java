package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every kind of bad request: a 4xx that says what and where, in our words, and nothing stored. */
@QuarkusTest
class ErrorsContractTest {
    /** What would show how the service is made. */
    private static final Pattern INSIDE = Pattern.compile(
            "Exception|org\\.|java\\.|javax\\.|jakarta\\.|com\\.fasterxml|io\\.quarkus|hibernate|(?i:jdbc|sqlite|postgres|"
                    + "select .* from|insert into|\\.java:)|\\tat ");

    private static Map<String, String> names;

    @Inject
    DataSource database;

    @BeforeEach
    void makeTheHerd() {
        if (names != null) {
            return;
        }
        TestHerd herd = TestHerd.make()
                .withAnimal("A1", ",\"birthDate\":\"2020-01-01\"")
                .withCalving("A1", "2025-08-19", 3)
                .withAnimal("A2")
                .withAnimal("GONE")
                .withCalving("GONE", "2024-01-10", 1)
                .withDeparture("GONE", "2025-06-01", "sale");
        String day = herd.post("test-days", TestHerd.testDayJson("A2", "2020-01-01", 20))
                .expecting(201)
                .textAt("/id");
        TestHerd other = TestHerd.make();
        Answer revoked = TestHerd.newKey("read write", "*", null).expecting(201);
        herd.send("DELETE", "/v1/keys/" + revoked.textAt("/id"), null, null).expecting(204);
        names = Map.of(
                "herd", herd.code(),
                "day", day,
                "admin", DatabaseForTests.ADMIN_KEY,
                "reader", TestHerd.key("read", herd.code(), null),
                "writer", TestHerd.key("write", herd.code(), null),
                "stranger", TestHerd.key("read write", other.code(), null),
                "revoked", revoked.textAt("/key"),
                "expired", TestHerd.key("read write", "*", "2024-12-31"));
    }

    static Stream<BadRequest> badRequests() {
        return Stream.concat(BadRequests.all(), BadKinds.all());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badRequests")
    void aBadRequestIsAnsweredWithWhatAndWhereAndStoresNothing(BadRequest bad) {
        StoredRows before = StoredRows.in(database);
        Answer answer = bad.request().send(names);
        assertThat(answer.status()).as(bad.name() + ": " + answer.text()).isEqualTo(bad.status());
        assertThat(answer.header("content-type").orElse("")).as(bad.name()).startsWith("application/problem+json");
        assertThat(answer.textAt("/code")).as(bad.name() + ": " + answer.text()).isEqualTo(bad.code());
        assertThat(answer.textAt("/type")).isEqualTo("/problems/" + bad.code());
        assertThat(answer.countAt("/status")).isEqualTo(bad.status());
        assertThat(answer.textAt("/title")).isNotBlank();
        assertThat(answer.textAt("/detail")).isNotBlank();
        assertThat(answer.textAt("/requestId")).isNotBlank();
        assertThat(answer.textAt("/instance")).isEqualTo(rawPath(bad.request()));
        assertPlace(bad, answer);
        assertThat(answer.text()).doesNotContainPattern(INSIDE);
        assertThat(answer.text()).doesNotContain("pb_secret", DatabaseForTests.ADMIN_KEY);
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    private static String rawPath(RawRequest request) {
        return URI.create(RawRequest.filled(request.path(), names)).getRawPath();
    }

    private static void assertPlace(BadRequest bad, Answer answer) {
        String place = bad.place();
        if (place.startsWith("~")) {
            assertThat(answer.textAt("/detail")).as(bad.name()).contains(place.substring(1));
        } else if (bad.fault() == null && place.startsWith("@")) {
            assertThat(answer.header(place.substring(1))).as(bad.name()).isPresent();
        }
        if (bad.fault() == null) {
            return;
        }
        String member = place.startsWith("?") ? "parameter" : place.startsWith("@") ? "header" : "pointer";
        // "/" stands for the body itself, whose pointer is empty (RFC 6901)
        String where = member.equals("pointer") ? (place.equals("/") ? "" : place) : place.substring(1);
        List<JsonNode> faults =
                StreamSupport.stream(answer.at("/errors").spliterator(), false).toList();
        assertThat(faults).as(bad.name() + ": " + answer.text()).anySatisfy(fault -> {
            assertThat(fault.path("code").asText()).isEqualTo(bad.fault());
            assertThat(fault.path(member).isTextual()).isTrue();
            assertThat(fault.path(member).asText()).isEqualTo(where);
            assertThat(fault.path("message").asText()).isNotBlank();
        });
    }

    @Test
    void theTableHasAtLeastSeventyKindsOfBadRequestAndEachNameOnce() {
        List<String> all = badRequests().map(BadRequest::name).toList();
        assertThat(all).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(70);
    }

    @Test
    void everyFaultOfARecordIsToldAtOnce() {
        Answer answer = RawRequest.post(
                        "/v1/herds/{herd}/test-days",
                        "{\"milkKg\":\"27,4\",\"fatPercent\":4,\"sccThousandPerMl\":null,\"source\":7}")
                .send(names)
                .expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/animal", "/date", "/milkKg", "/fatPercent", "/sccThousandPerMl", "/source");
        assertThat(answer.textAt("/detail")).isEqualTo("6 errors");
    }

    @Test
    void aMisspeltMemberColumnOrParameterIsAnsweredWithTheOneProbablyMeant() {
        assertThat(RawRequest.post("/v1/herds/{herd}/test-days", "{\"fatPercent\":4}")
                        .send(names)
                        .text())
                .contains("did you mean fatPct?");
        assertThat(RawRequest.post("/v1/herds/{herd}/test-days/bulk", "text/csv", "animal_id,date,milk\n")
                        .send(names)
                        .text())
                .contains("did you mean milk_kg?");
        assertThat(RawRequest.get("/v1/herds/{herd}/summary?asof=2025-01-01")
                        .send(names)
                        .text())
                .contains("did you mean asOf?");
    }

    @Test
    void theAllowHeaderListsWhatWorks() {
        assertThat(RawRequest.of("DELETE", "/v1/herds/{herd}/test-days")
                        .send(names)
                        .header("Allow")
                        .orElse(""))
                .isEqualTo("GET, HEAD, POST");
    }

    /** RFC 9110, section 15.5.16, and RFC 5789, section 2.2: which media types are read is told in a header. */
    @Test
    void aBodyOfAnotherMediaTypeIsToldWhichAreRead() {
        String records = "/v1/herds/{herd}/test-days";
        assertThat(RawRequest.of("POST", records)
                        .with("Content-Type", "text/plain")
                        .send(names)
                        .expecting(415)
                        .header("Accept"))
                .contains("application/json");
        assertThat(RawRequest.of("POST", records + "/bulk")
                        .with("Content-Type", "text/plain")
                        .send(names)
                        .expecting(415)
                        .header("Accept"))
                .contains("application/json, application/x-ndjson, text/csv, multipart/form-data");
        assertThat(RawRequest.of("PATCH", "/v1/herds/{herd}")
                        .with("If-Match", "*")
                        .with("Content-Type", "application/json")
                        .send(names)
                        .expecting(415)
                        .header("Accept-Patch"))
                .contains("application/merge-patch+json");
    }

    @Test
    void aHerdOutOfReachLooksWordForWordLikeOneThatDoesNotExist() {
        for (String rest : List.of("", "/animals", "/test-days", "/summary", "/animals/example.eartag%3AA1")) {
            String there = RawRequest.get("/v1/herds/{herd}" + rest)
                    .keyed("X-API-Key", "{stranger}")
                    .send(names)
                    .expecting(404)
                    .text();
            String nowhere = RawRequest.get("/v1/herds/t-nowhere" + rest)
                    .keyed("X-API-Key", "{stranger}")
                    .send(names)
                    .expecting(404)
                    .text();
            assertThat(withoutAddress(there, names.get("herd"))).isEqualTo(withoutAddress(nowhere, "t-nowhere"));
        }
    }

    private static String withoutAddress(String body, String code) {
        return body.replace(code, "?").replaceAll("\"requestId\":\"[^\"]*\"", "");
    }

    @Test
    void aKeyOfOneHerdCannotTellWhetherAnotherHasAnAnimal() {
        RawRequest known = RawRequest.get("/v1/herds/{herd}/animals/example.eartag%3AA1");
        RawRequest unknown = RawRequest.get("/v1/herds/{herd}/animals/example.eartag%3AZZ");
        String a = known.keyed("X-API-Key", "{stranger}")
                .send(names)
                .expecting(404)
                .text();
        String b = unknown.keyed("X-API-Key", "{stranger}")
                .send(names)
                .expecting(404)
                .text();
        assertThat(withoutAddress(a, "A1")).isEqualTo(withoutAddress(b, "ZZ"));
    }

    @Test
    void oneBadRowAmongGoodOnesIsRefusedWithItsPlaceAndTheOthersAreKept() {
        Answer answer = RawRequest.post(
                        "/v1/herds/{herd}/test-days/bulk",
                        "application/x-ndjson",
                        TestHerd.testDayJson("A1", "2025-09-10", 27.4) + "\n{\"animal\":\n\n"
                                + TestHerd.testDayJson("A1", "2025-10-10", 26.1) + "\n")
                .send(names)
                .expecting(200);
        assertThat(answer.countAt("/received")).isEqualTo(3);
        assertThat(answer.countAt("/created")).isEqualTo(2);
        assertThat(answer.countAt("/refused")).isEqualTo(1);
        assertThat(answer.countAt("/rows/0/row")).isEqualTo(2);
        assertThat(answer.countAt("/rows/0/line")).isEqualTo(2);
        assertThat(answer.textAt("/rows/0/findings/0/code")).isEqualTo("malformed-json");
        assertThat(answer.textAt("/rows/0/findings/0/pointer")).isEqualTo("/rows/1");
        assertThat(answer.text()).doesNotContainPattern(INSIDE);
    }

    @Test
    void aTableRowWithADecimalCommaBetweenCommasIsRefusedForItsNumberOfCells() {
        StoredRows before = StoredRows.in(database);
        Answer answer = RawRequest.post(
                        "/v1/herds/{herd}/test-days/bulk",
                        "text/csv",
                        "animal_scheme,animal_id,date,milk_kg\nexample.eartag,A1,2025-11-12,27,4\n")
                .send(names)
                .expecting(200);
        assertThat(answer.countAt("/refused")).isEqualTo(1);
        assertThat(answer.textAt("/rows/0/findings/0/code")).isEqualTo("column-count");
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void aQuotedDecimalCommaBetweenCommasIsNoNumber() {
        StoredRows before = StoredRows.in(database);
        Answer answer = RawRequest.post(
                        "/v1/herds/{herd}/test-days/bulk",
                        "text/csv",
                        "animal_scheme,animal_id,date,milk_kg\nexample.eartag,A1,2025-11-12,\"27,4\"\n")
                .send(names)
                .expecting(200);
        assertThat(answer.textAt("/rows/0/findings/0/code")).isEqualTo("not-a-number");
        assertThat(answer.textAt("/rows/0/findings/0/column")).isEqualTo("milk_kg");
        assertThat(answer.textAt("/rows/0/findings/0/value")).isEqualTo("27,4");
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void allOrNothingWithOneBadRowStoresNothingAndTellsTheRow() {
        StoredRows before = StoredRows.in(database);
        Answer answer = RawRequest.post(
                        "/v1/herds/{herd}/test-days/bulk?atomic=true",
                        "[" + TestHerd.testDayJson("A1", "2025-11-10", 27.4) + ","
                                + TestHerd.testDayJson("A1", "2025-11-11", -1) + "]")
                .send(names)
                .expecting(422);
        assertThat(answer.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(answer.textAt("/code")).isEqualTo("batch-rejected");
        assertThat(answer.textAt("/instance")).isEqualTo("/v1/herds/" + names.get("herd") + "/test-days/bulk");
        assertThat(answer.textAt("/requestId")).isNotBlank();
        assertThat(answer.countAt("/refused")).isEqualTo(1);
        assertThat(answer.at("/rows").findValuesAsText("code")).contains("negative-value");
        assertThat(answer.text()).contains("/1/milkKg").doesNotContainPattern(INSIDE);
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }
}
