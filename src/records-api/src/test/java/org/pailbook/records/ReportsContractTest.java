package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** The tables for spreadsheet programs: what stands in them, in each form, and how they are asked for. */
@QuarkusTest
class ReportsContractTest {
    private static final List<String> NAMES =
            List.of("animals", "events", "findings", "herd-summary", "lactations", "projections", "test-days");
    private static final String DAY = "2025-11-30";
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /** A cow with a name that is a formula, an ear tag with zeros and quotes, one test without fat, and a dry cow. */
    private static TestHerd herd() {
        TestHerd herd = TestHerd.make()
                .withAnimal("007", ",\"name\":\"=1+1\",\"breed\":\"HOL\",\"birthDate\":\"2021-02-03\"")
                .withCalving("007", "2025-08-19", 2)
                .withAnimal("-9", ",\"name\":\"Rosa, \\\"die Alte\\\"; Zoë\"")
                .withCalving("-9", "2024-08-01", 3)
                .withDryOff("-9", "2025-06-30");
        herd.withTestDay("007", "2025-09-16", 27.45, 4.6).withTestDay("007", "2025-10-14", 31);
        return herd.withTestDay("-9", "2025-05-01", 18.2, 4.9).withDeparture("-9", "2025-09-01", "sale");
    }

    private static List<String> lines(TestHerd herd, String rest) {
        Answer answer = herd.get("/reports/" + rest).expecting(200);
        assertThat(answer.text()).startsWith(BYTE_ORDER_MARK).endsWith("\r\n");
        return List.of(answer.text().substring(1).split("\r\n"));
    }

    /** Rows by column name; only for rows without quotes. */
    private static List<Map<String, String>> rows(TestHerd herd, String rest) {
        List<String> lines = lines(herd, rest);
        String[] columns = lines.get(0).split(",");
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            assertThat(cells).as(line).hasSameSizeAs(columns);
            Map<String, String> row = new TreeMap<>();
            for (int i = 0; i < columns.length; i++) {
                row.put(columns[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    private static Response bytes(TestHerd herd, String rest) {
        return given().header("X-API-Key", DatabaseForTests.ADMIN_KEY).get(herd.path("/reports/" + rest));
    }

    @Test
    void everyReportIsListedWithItsColumnsAndIsThereInEveryFormAlsoForAnEmptyHerd() {
        TestHerd empty = TestHerd.make();
        Answer list = empty.get("/reports").expecting(200);
        assertThat(list.at("/items").findValuesAsText("name")).containsAll(NAMES);
        for (JsonNode report : list.at("/items")) {
            String name = report.path("name").asText();
            List<String> columns = new ArrayList<>();
            report.path("columns").forEach(column -> {
                columns.add(column.path("name").asText());
                assertThat(column.path("name").asText()).matches("[a-z0-9]+(_[a-z0-9]+)*");
                assertThat(column.path("meaning").asText()).as(name).isNotBlank();
            });
            assertThat(columns).endsWith("as_of", "method", "method_version", "warnings");
            assertThat(report.path("addresses")).hasSize(3);
            for (JsonNode address : report.path("addresses")) {
                empty.send("GET", address.asText(), null, null).expecting(200);
            }
            assertThat(lines(empty, name + ".csv").get(0)).isEqualTo(String.join(",", columns));
            assertThat(empty.get("/reports/" + name + ".json").at("/rows").isArray())
                    .isTrue();
        }
        assertThat(lines(empty, "test-days.csv")).hasSize(1);
        assertThat(rows(empty, "herd-summary.csv").get(0)).containsEntry("value", "0");
    }

    @Test
    void publishedColumnsNeitherMoveNorChangeTheirNames() {
        // sheets refer to columns by place: a new one goes after the last own column, before as_of
        TestHerd empty = TestHerd.make();
        Map<String, String> published = Map.of(
                "animals",
                "animal_scheme,animal_id,name,breed,sex,birth_date,state,parity,calved_on,days_in_milk",
                "test-days",
                "animal_scheme,animal_id,name,date,parity,days_in_milk,milk_kg,fat_pct,protein_pct,lactose_pct,scc_thousand_per_ml",
                "lactations",
                "animal_scheme,animal_id,name,parity,calved_on,state,ended_on,days_in_milk,milk_tests,to_days_in_milk,"
                        + "accumulated_milk_kg,accumulated_fat_kg,accumulated_protein_kg,fat_pct,protein_pct",
                "projections",
                "animal_scheme,animal_id,name,breed,parity,calved_on,days_in_milk,tests,last_test_on,last_milk_kg,"
                        + "projected_305_kg,projected_305_low_kg,projected_305_high_kg,projected_305_low_95_kg,projected_305_high_95_kg,"
                        + "projected_305_fat_kg,projected_305_protein_kg,produced_kg,reliability_share,next_test_on,next_test_milk_kg,"
                        + "next_test_low_kg,next_test_high_kg",
                "events",
                "animal_scheme,animal_id,date,event,parity,kind,reason,note",
                "findings",
                "animal_scheme,animal_id,name,date,code,effect,meaning,field,seen,expected",
                "herd-summary",
                "figure,unit,value,low,high,last_test_on");
        published.forEach((name, columns) ->
                assertThat(lines(empty, name + ".csv").get(0)).as(name).startsWith(columns + ","));
    }

    @Test
    void textThatWouldRunAsAFormulaIsGuardedAndNothingElseIsTouched() {
        TestHerd herd = herd();
        List<String> lines = lines(herd, "test-days.csv?asOf=" + DAY);
        assertThat(lines)
                .contains("example.eartag,007,'=1+1,2025-09-16,2,28,27.45,4.6,,,," + DAY + ",,,")
                .contains("example.eartag,007,'=1+1,2025-10-14,2,56,31,,,,," + DAY + ",,,")
                .anyMatch(line -> line.startsWith(
                        "example.eartag,'-9,\"Rosa, \"\"die Alte\"\"; Zoë\",2025-05-01,3,273,18.2,4.9,,,,"));
        assertThat(lines(herd, "test-days.csv?locale=semicolon&asOf=" + DAY))
                .contains("example.eartag;007;'=1+1;2025-09-16;2;28;27,45;4,6;;;;" + DAY + ";;;");
        JsonNode rows = herd.get("/reports/test-days.json?asOf=" + DAY).at("/rows");
        assertThat(rows.findValuesAsText("name")).contains("=1+1", "Rosa, \"die Alte\"; Zoë");
        assertThat(rows.findValuesAsText("animalId")).contains("007", "-9");
    }

    @Test
    void theWorkbookHasTrueDatesAndNumbersAndTextStaysText() throws IOException {
        Response answer = bytes(herd(), "test-days.xlsx?asOf=" + DAY);
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).isEqualTo("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(answer.asByteArray()))) {
            List<Row> rows = workbook.getFirstSheet().read();
            assertThat(rows).hasSize(4);
            Row first = rows.stream()
                    .filter(row -> row.getCell(1).getRawValue().equals("007"))
                    .findFirst()
                    .orElseThrow();
            assertThat(first.getCell(1).getType()).isEqualTo(CellType.STRING);
            assertThat(first.getCell(2).getType()).isEqualTo(CellType.STRING);
            assertThat(first.getCellText(2)).isEqualTo("=1+1");
            assertThat(first.getCell(3).getType()).isEqualTo(CellType.NUMBER);
            assertThat(first.getCell(3).asDate().toLocalDate()).isEqualTo(LocalDate.of(2025, 9, 16));
            assertThat(first.getCell(6).asNumber().doubleValue()).isEqualTo(27.45);
            assertThat(rows.stream().flatMap(Row::stream))
                    .noneMatch(cell -> cell != null && cell.getType() == CellType.FORMULA);
            List<Row> about = workbook.findSheet("About").orElseThrow().read();
            assertThat(about.stream().map(row -> row.getCellText(0))).contains("as of", "milk_kg");
        }
    }

    @Test
    void theReportsAgreeWithTheFigures() {
        TestHerd herd = herd();
        Answer lactation =
                herd.getAnimal("007", "/lactations/current?asOf=" + DAY).expecting(200);
        Map<String, String> projection =
                rows(herd, "projections.csv?asOf=" + DAY).get(0);
        assertThat(Double.parseDouble(projection.get("projected_305_kg")))
                .isCloseTo(lactation.numberAt("/projected305/value"), within(0.5));
        assertThat(Double.parseDouble(projection.get("projected_305_low_kg")))
                .isCloseTo(lactation.numberAt("/projected305/interval80/low"), within(0.5));
        assertThat(projection)
                .containsEntry("method", lactation.textAt("/projected305/method/name"))
                .containsEntry("method_version", lactation.textAt("/projected305/method/version"))
                .containsEntry("tests", "2")
                .containsEntry("as_of", DAY);
        assertThat(projection.get("warnings"))
                .contains(lactation.at("/projected305/warnings/0/code").asText());
        JsonNode lactations =
                herd.get("/reports/lactations.json?asOf=" + DAY).expecting(200).at("/rows");
        assertThat(lactations).hasSize(2);
        assertThat(lactations.get(0).path("accumulatedMilkKg").doubleValue())
                .isCloseTo(lactation.numberAt("/accumulated/value"), within(0.05));
        assertThat(lactations.get(1).path("endedOn").asText()).isEqualTo("2025-06-30");
        assertThat(herd.get("/reports/animals.json?asOf=" + DAY).at("/rows").findValuesAsText("state"))
                .containsExactly("inMilk", "left");
        assertThat(herd.get("/reports/events.json?asOf=" + DAY).at("/rows").findValuesAsText("event"))
                .containsExactly("calving", "calving", "dry-off", "departure");
        assertThat(herd.get("/reports/events.json?asOf=2025-06-30").at("/rows").findValuesAsText("event"))
                .containsExactly("calving", "dry-off");
        assertThat(herd.get("/reports/herd-summary.json?asOf=" + DAY)
                        .at("/rows/0/value")
                        .intValue())
                .isEqualTo(1);
        TestHerd doubtful = TestHerd.make().withAnimal("1").withTestDay("1", "2025-09-16", 20);
        assertThat(doubtful.get("/reports/findings.json?asOf=" + DAY)
                        .at("/rows/0/code")
                        .asText())
                .isEqualTo("no-calving");
    }

    @Test
    void theTestDaysOfTheSampleHerdComeOutAsTheyWentIn() {
        TestHerd herd = TestHerd.inZone("Atlantic/Azores");
        for (String kind : List.of("animals", "calvings", "test-days")) {
            herd.bulk(kind, TestHerd.CSV, SampleBook.file(kind)).expecting(200);
        }
        List<String> in = SampleBook.rows("test-days").stream()
                .map(cells -> String.join(
                        ",",
                        cells[1],
                        cells[2],
                        number(cells[3]),
                        number(cells[4]),
                        number(cells[5]),
                        number(cells[6]),
                        number(cells[7])))
                .sorted()
                .toList();
        List<String> out = rows(herd, "test-days.csv?asOf=2026-11-01").stream()
                .map(row -> String.join(
                        ",",
                        row.get("animal_id"),
                        row.get("date"),
                        row.get("milk_kg"),
                        row.get("fat_pct"),
                        row.get("protein_pct"),
                        row.get("lactose_pct"),
                        row.get("scc_thousand_per_ml")))
                .sorted()
                .toList();
        assertThat(out).isEqualTo(in);
    }

    private static String number(String cell) {
        return cell.isEmpty()
                ? ""
                : new java.math.BigDecimal(cell).stripTrailingZeros().toPlainString();
    }

    @Test
    void aReportIsSentAgainOnlyWhenTheHerdHasChanged() {
        TestHerd herd = herd();
        Response first = bytes(herd, "test-days.csv?asOf=" + DAY);
        assertThat(first.header("Cache-Control")).isEqualTo("private, no-cache");
        assertThat(first.header("Content-Type")).isEqualTo("text/csv; charset=utf-8; header=present");
        assertThat(first.header("Content-Disposition"))
                .isEqualTo("inline; filename=\"" + herd.code() + "-test-days-" + DAY + ".csv\"");
        String etag = first.header("ETag");
        assertThat(again(herd, etag, "test-days.csv?asOf=" + DAY).statusCode()).isEqualTo(304);
        assertThat(again(herd, "\"other\", " + etag, "test-days.csv?asOf=" + DAY)
                        .statusCode())
                .isEqualTo(304);
        assertThat(again(herd, etag, "test-days.csv?asOf=2025-11-29").statusCode())
                .isEqualTo(200);
        assertThat(again(herd, etag, "test-days.json?asOf=" + DAY).statusCode()).isEqualTo(200);
        assertThat(again(herd, etag, "test-days.csv?locale=semicolon&asOf=" + DAY)
                        .statusCode())
                .isEqualTo(200);
        herd.withTestDay("007", "2025-11-11", 30);
        assertThat(again(herd, etag, "test-days.csv?asOf=" + DAY).statusCode()).isEqualTo(200);
        assertThat(herd.get("/summary").header("Cache-Control")).hasValue("private, no-store");
    }

    private static Response again(TestHerd herd, String etag, String rest) {
        return given().header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                .header("If-None-Match", etag)
                .get(herd.path("/reports/" + rest));
    }

    @Test
    void whatASpreadsheetProgramSaysItAcceptsDoesNotMatter() {
        TestHerd herd = herd();
        for (String accept : List.of("text/html", "image/gif, image/jpeg", "*/*")) {
            assertThat(given().auth()
                            .preemptive()
                            .basic("anyone", DatabaseForTests.ADMIN_KEY)
                            .accept(accept)
                            .get(herd.path("/reports/animals.csv"))
                            .statusCode())
                    .as(accept)
                    .isEqualTo(200);
        }
    }

    @Test
    void whatIsNotThereOrOutOfReachIsSaidTheSameWayAsEverywhere() {
        TestHerd herd = herd();
        for (String wrong : List.of("tests.csv", "test-days.ods", "test-days", ".csv", "csv", "test-days.CSV")) {
            assertThat(herd.get("/reports/" + wrong).expecting(404).textAt("/code"))
                    .as(wrong)
                    .isEqualTo("not-found");
        }
        for (String wrong :
                List.of("animals.csv?asOf=yesterday", "animals.csv?locale=comma", "animals.json?locale=semicolon")) {
            assertThat(herd.get("/reports/" + wrong).expecting(400).textAt("/code"))
                    .as(wrong)
                    .isEqualTo("bad-parameter");
        }
        assertThat(herd.get("/reports/animals.csv?asof=" + DAY).expecting(400).textAt("/code"))
                .isEqualTo("unknown-parameter");
        assertThat(herd.get("/reports?asOf=" + DAY).expecting(400).textAt("/code"))
                .isEqualTo("unknown-parameter");
        TestHerd stranger = herd.withKey(TestHerd.key("read", TestHerd.make().code(), null));
        Answer hidden = stranger.get("/reports/animals.csv").expecting(404);
        Answer absent = herd.send("GET", "/v1/herds/no-such-herd/reports/animals.csv", null, null)
                .expecting(404);
        assertThat(hidden.textAt("/detail")).isEqualTo(absent.textAt("/detail"));
        assertThat(stranger.get("/reports/nothing.csv").expecting(404).textAt("/detail"))
                .isEqualTo(absent.textAt("/detail"));
        stranger.get("/reports").expecting(404);
        herd.withKey("no-such-key").get("/reports/animals.csv").expecting(401);
    }

    @Test
    void everyKindOfEventIsInTheReportWithWhatWasEntered() {
        TestHerd herd = TestHerd.make();
        String cow = "{\"animal\":" + TestHerd.animal("EV");
        herd.withAnimal("EV").withCalving("EV", "2025-03-01", 2);
        herd.post("services", cow + ",\"date\":\"2025-05-01\",\"method\":\"insemination\",\"sire\":\"a bull\"}");
        herd.post("pregnancy-checks", cow + ",\"date\":\"2025-06-10\",\"result\":\"empty\"}");
        herd.post(
                "breeding-decisions",
                cow + ",\"date\":\"2025-06-11\",\"decision\":\"doNotBreed\",\"reason\":\"lame\"}");
        herd.post(
                "treatments",
                cow
                        + ",\"startedOn\":\"2025-06-12\",\"productName\":\"a product\",\"milkWithheldUntil\":\"2025-06-19\"}");
        herd.post(
                "foremilk-checks",
                cow + ",\"date\":\"2025-06-12\",\"milkingOfDay\":\"am\",\"quarter\":\"LF\",\"finding\":\"flakes\"}");
        herd.post("milkings", cow + ",\"startedAt\":\"2025-06-12T05:00:00Z\",\"milkingOfDay\":\"am\",\"milkKg\":14.2}");
        JsonNode all =
                herd.get("/reports/events.json?asOf=2025-06-20").expecting(200).at("/rows");
        assertThat(all.findValuesAsText("event"))
                .endsWith("service", "pregnancy-check", "breeding-decision", "treatment", "foremilk-check", "milking");
        int last = all.size() - 1;
        assertThat(all.get(last - 5).path("detail").asText()).isEqualTo("insemination, a bull");
        assertThat(all.get(last - 4).path("detail").asText()).isEqualTo("empty");
        assertThat(all.get(last - 3).path("reason").asText()).isEqualTo("lame");
        assertThat(all.get(last - 2).path("milkWithheldUntil").asText()).isEqualTo("2025-06-19");
        assertThat(all.get(last - 1).path("detail").asText()).isEqualTo("am, LF, flakes");
        assertThat(all.get(last).path("detail").asText()).isEqualTo("am, 14.2 kg");
    }
}
