package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Tables out and in again: what the service writes it reads, and nothing changes by that. */
@QuarkusTest
class TablesContractTest {
    @Inject
    DataSource database;

    static List<RecordExamples> kinds() {
        return RecordExamples.ALL;
    }

    private static TestHerd herd() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void theTableOfAKindGoesInAgainUnchangedAndFillsAnotherHerdAlike(RecordExamples example) {
        TestHerd herd = herd();
        herd.post(example.kind(), example.json("\"source\":\"a tool\",\"sourceId\":\"7\""))
                .expecting(201);
        herd.post(example.kind(), "{" + example.other() + "}").expecting(201);
        for (String locale : List.of("", "?locale=semicolon")) {
            String table = herd.get("/" + example.kind() + ".csv" + locale)
                    .expecting(200)
                    .text();
            assertThat(table).startsWith("\uFEFF").contains("\r\n");
            StoredRows before = StoredRows.in(database);
            Answer again = herd.bulk(example.kind(), TestHerd.CSV, table).expecting(200);
            assertThat(again.countAt("/unchanged")).as(table + again.text()).isEqualTo(2);
            assertThat(StoredRows.in(database)).isEqualTo(before);
            TestHerd second = herd();
            assertThat(second.bulk(example.kind(), TestHerd.CSV, table).countAt("/created"))
                    .isEqualTo(2);
            assertThat(records(second, example.kind())).isEqualTo(records(herd, example.kind()));
        }
    }

    private static List<String> records(TestHerd herd, String kind) {
        return herd.get("/" + kind).at("/items").findValues("record").stream()
                .map(Object::toString)
                .toList();
    }

    @Test
    void animalsAndOldKindsGoOutAndInToo() {
        TestHerd herd = herd().withAnimal("A2", ",\"name\":\"-=Stella\"").withDryOff("A1", "2026-06-01");
        herd.withTestDay("A1", "2025-10-10", 27.4, 4.12).withDeparture("A1", "2026-07-01", "sale");
        herd.post("calvings", """
                {"animal":%s,"date":"2024-08-01","calves":[{"sex":"female","status":"alive","weightKg":41.5},{"sex":"male"}]}""".formatted(TestHerd.animal("A1"))).expecting(201);
        for (String kind : List.of("animals", "calvings", "test-days", "dry-offs", "departures")) {
            String table = herd.get("/" + kind + ".csv").expecting(200).text();
            Answer again = herd.bulk(kind, TestHerd.CSV, table).expecting(200);
            assertThat(again.countAt("/unchanged"))
                    .as(kind + table + again.text())
                    .isEqualTo(again.countAt("/received"));
            assertThat(again.countAt("/received")).isPositive();
        }
        assertThat(herd.get("/animals.csv").text()).contains("'-=Stella");
    }

    @Test
    void aListAskedForAsCsvIsTheTable() {
        TestHerd herd = herd().withTestDay("A1", "2025-10-10", 27.4, 4.12);
        String asked = RestAssured.given()
                .header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                .accept("text/csv")
                .get(herd.path("/test-days?from=2025-01-01"))
                .then()
                .statusCode(200)
                .contentType("text/csv")
                .extract()
                .asString();
        assertThat(asked).isEqualTo(herd.get("/test-days.csv").text()).contains("A1,2025-10-10,27.4,4.12");
        assertThat(herd.get("/test-days").at("/items").size()).isEqualTo(1);
    }

    @Test
    void aHerdWithoutRecordsHasATableWithItsHeader() {
        assertThat(TestHerd.make().get("/milkings.csv").expecting(200).text())
                .startsWith("\uFEFFanimal_scheme,animal_id,started_at,milking_of_day,milk_kg")
                .containsOnlyOnce("\r\n");
    }

    @Test
    void whatIsNoTableOrNotForItIsRefused() {
        TestHerd herd = herd();
        assertThat(herd.get("/cats.csv").expecting(404).textAt("/code")).isEqualTo("not-found");
        assertThat(herd.get("/animals.csv?from=2025-01-01").expecting(400).textAt("/code"))
                .isEqualTo("bad-parameter");
        assertThat(herd.get("/milkings.csv?locale=en").expecting(400).textAt("/code"))
                .isEqualTo("bad-parameter");
        assertThat(herd.get("/milkings.csv?animal=x").expecting(400).textAt("/code"))
                .isEqualTo("unknown-parameter");
        TestHerd stranger = herd.withKey(TestHerd.key("read", TestHerd.make().code(), null));
        assertThat(stranger.get("/milkings.csv").expecting(404).textAt("/code")).isEqualTo("not-found");
    }

    @Test
    void headersAreReadInAnyOrderCaseAndSeparatorAndContentIsNot() {
        TestHerd herd = herd();
        for (String table : List.of(
                "Milk KG\tAnimal ID\tanimal-scheme\t DATE \n27,4\tA1\texample.eartag\t2025-10-10\n",
                "MILK_KG; animal_id ;Animal_Scheme;date\n27,4;A1;example.eartag;2025-10-10\n",
                "\"Milk kg\",animal id,animal scheme,date\n27.4,A1,example.eartag,2025-10-10\n")) {
            Answer answer = herd.bulk("test-days", TestHerd.CSV, table).expecting(200);
            assertThat(answer.countAt("/refused")).as(table + answer.text()).isZero();
        }
        assertThat(herd.get("/test-days").numberAt("/items/0/record/milkKg")).isEqualTo(27.4);
        Answer strict = herd.bulk(
                "test-days",
                TestHerd.CSV,
                "milk_kg,animal_id,animal_scheme,date\n27.4 kg,A1,example.eartag,10.10.2025\n");
        assertThat(strict.at("/rows").findValuesAsText("code")).contains("not-a-number", "not-a-date");
    }

    private static Answer form(TestHerd herd, String body) {
        return RawRequest.post(
                        "/v1/herds/" + herd.code() + "/test-days/bulk", "multipart/form-data; boundary=XyZ", body)
                .send(Map.of("admin", DatabaseForTests.ADMIN_KEY, "herd", herd.code()));
    }

    private static String part(String headers, String content) {
        return "--XyZ\r\n" + headers + "\r\n\r\n" + content + "\r\n--XyZ--\r\n";
    }

    @Test
    void aFormWithOneFileIsReadLikeTheFileItself() {
        TestHerd herd = herd();
        String rows = "animal_scheme,animal_id,date,milk_kg\r\nexample.eartag,A1,2025-10-10,27.4\r\n";
        String named = "Content-Disposition: form-data; name=\"file\"; filename=\"tests.CSV\"";
        assertThat(form(herd, part(named, rows)).expecting(200).countAt("/created"))
                .isEqualTo(1);
        assertThat(form(herd, part(named + "\r\nContent-Type: text/csv", rows))
                        .expecting(200)
                        .countAt("/unchanged"))
                .isEqualTo(1);
        String json = "Content-Disposition: form-data; name=\"file\"; filename=\"x\"\r\nContent-Type: application/json";
        assertThat(form(herd, part(json, "[" + TestHerd.testDayJson("A1", "2025-11-10", 26) + "]"))
                        .expecting(200)
                        .countAt("/created"))
                .isEqualTo(1);
    }

    @Test
    void aBrokenFormIsRefusedAndStoresNothing() {
        TestHerd herd = herd();
        String rows = "animal_scheme,animal_id,date,milk_kg\r\nexample.eartag,A1,2025-10-10,27.4\r\n";
        String named = "Content-Disposition: form-data; name=\"file\"; filename=\"tests.csv\"";
        StoredRows before = StoredRows.in(database);
        List<String> broken = List.of(
                "",
                rows,
                part(named.replace("\"file\"", "\"table\""), rows),
                "--XyZ\r\n" + named + "\r\n\r\n" + rows,
                "--XyZ\r\n" + named);
        for (String body : broken) {
            Answer answer = form(herd, body).expecting(400);
            assertThat(answer.textAt("/code")).as(body).isEqualTo("malformed-form");
        }
        String unknown = named.replace(".csv", ".xls");
        assertThat(form(herd, part(unknown, rows)).expecting(415).textAt("/code"))
                .isEqualTo("unsupported-media-type");
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }
}
