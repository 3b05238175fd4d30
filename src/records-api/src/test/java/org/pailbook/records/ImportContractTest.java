package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** Files brought in by the plain forms of the page: what is proposed, what is asked, what is refused, what is stored. */
@QuarkusTest
class ImportContractTest {
    /** Long enough not to be through before the first look; 100,000 rows were tried by hand. */
    private static final int LONG_FILE = 30_000;

    private static final String FORM = "application/x-www-form-urlencoded";
    private static final String TESTS =
            "Cow no;Weigh date;Milk;Fat %;Cell count\n7;2025-11-12;27,4;4,1;84\n8;2025-11-12;31;3,9;120\n";

    private static TestHerd herd() {
        return TestHerd.make()
                .withAnimal("7")
                .withAnimal("8")
                .withCalving("7", "2025-08-19", 2)
                .withCalving("8", "2025-08-19", 2);
    }

    private static RequestSpecification browser() {
        return given().urlEncodingEnabled(false)
                .redirects()
                .follow(false)
                .header("X-API-Key", DatabaseForTests.ADMIN_KEY);
    }

    private static Response choose(TestHerd herd, String name, byte[] file) {
        return browser()
                .multiPart("file", name, file, "application/octet-stream")
                .post("/pages/herds/" + herd.code() + "/import");
    }

    private static String chosen(TestHerd herd, String text) {
        return chosen(herd, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Address of the chosen file. */
    private static String chosen(TestHerd herd, byte[] file) {
        Response answer = choose(herd, "from the laboratory.csv", file);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(303);
        return path(answer);
    }

    private static String path(Response redirect) {
        return redirect.header("Location").replaceFirst("^https?://[^/]+", "");
    }

    private static String read(String path) {
        Response page = browser().get(path);
        assertThat(page.statusCode()).as(page.asString()).isEqualTo(200);
        return page.asString();
    }

    /** The form as it stands on the page, each field with the answer that is chosen. */
    private static Map<String, String> form(String html) {
        Map<String, String> fields = new LinkedHashMap<>();
        Matcher select = Pattern.compile("(?s)<select id=\"[^\"]+\" name=\"([^\"]+)\">(.*?)</select>")
                .matcher(html);
        while (select.find()) {
            Matcher option = Pattern.compile("value=\"([^\"]*)\" selected").matcher(select.group(2));
            fields.put(select.group(1), option.find() ? option.group(1) : "");
        }
        Matcher input = Pattern.compile("<input [^>]*name=\"([^\"]+)\"[^>]*value=\"([^\"]*)\"([^>]*)>")
                .matcher(html);
        while (input.find()) {
            if (!input.group().contains("type=\"radio\"") || input.group(3).contains("checked")) {
                fields.put(input.group(1), input.group(2));
            }
        }
        fields.remove("asOf");
        return fields;
    }

    private static Response check(String path, Map<String, String> fields) {
        StringBuilder body = new StringBuilder("check=yes");
        fields.forEach((name, value) -> body.append('&')
                .append(name)
                .append('=')
                .append(java.net.URLEncoder.encode(value, StandardCharsets.UTF_8)));
        return browser().contentType(FORM).body(body.toString()).post(path);
    }

    private static String rows(Response checked) {
        assertThat(checked.statusCode()).as(checked.asString()).isEqualTo(303);
        String path = path(checked);
        String page = read(path);
        for (int look = 0; look < 300 && page.contains("<progress"); look++) {
            LockSupport.parkNanos(400_000_000);
            page = read(path);
        }
        return page;
    }

    private static String count(String page, String word) {
        Matcher found =
                Pattern.compile("<dt>" + word + "</dt><dd>([0-9]+)</dd>").matcher(page);
        assertThat(found.find()).as(page).isTrue();
        return found.group(1);
    }

    private static JsonNode test(TestHerd herd, int place) {
        return herd.get("/test-days?from=2025-11-12&to=2025-11-12")
                .expecting(200)
                .at("/items/" + place + "/record");
    }

    private static Response take(String path) {
        return browser().post(path + "/rows");
    }

    @Test
    void aFileGoesFromItsOwnHeadingsOverATrialIntoTheHerd() {
        TestHerd herd = herd();
        String path = chosen(herd, TESTS);
        String meaning = read(path);
        assertThat(form(meaning))
                .containsEntry("kind", "test-days")
                .containsEntry("col.0", "animal_id")
                .containsEntry("col.1", "date")
                .containsEntry("col.2", "milk_kg")
                .containsEntry("col.3", "fat_pct")
                .containsEntry("col.4", "scc_thousand_per_ml")
                .containsEntry("scheme", "example.eartag")
                .containsEntry("decimal", "comma")
                .containsEntry("unit.milk_kg", "kg");
        String trial = rows(check(path, form(meaning)));
        assertThat(trial).contains("Nothing is stored yet.", "Take rows: 2", "27.4");
        assertThat(count(trial, "New")).isEqualTo("2");
        assertThat(herd.get("/test-days").expecting(200).at("/items")).isEmpty();
        String taken = rows(take(path));
        assertThat(count(taken, "New")).isEqualTo("2");
        assertThat(test(herd, 0).at("/milkKg").asDouble()).isEqualTo(27.4);
        assertThat(test(herd, 0).at("/sccThousandPerMl").asDouble()).isEqualTo(84);
        assertThat(count(rows(take(path)), "As they were")).isEqualTo("2");
    }

    @Test
    void theMeaningIsRememberedForTheNextFileWithTheSameHeadingInAnyOrder() {
        TestHerd herd = herd();
        String path = chosen(herd, "A,B,C\n7,2025-11-12,27.4\n");
        Map<String, String> said = form(read(path));
        assertThat(said).containsEntry("col.0", "");
        said.put("kind", "test-days");
        said.put("kindShown", "test-days");
        said.put("col.0", "animal_id");
        said.put("col.1", "date");
        said.put("col.2", "milk_kg");
        said.put("source", "our laboratory");
        said.put("scheme", "example.eartag");
        assertThat(count(rows(check(path, said)), "New")).isEqualTo("1");
        String next = read(chosen(herd, "C;A;B\n28,9;8;2025-11-12\n"));
        assertThat(next).contains("As you said the last time");
        assertThat(form(next))
                .containsEntry("col.0", "milk_kg")
                .containsEntry("col.1", "animal_id")
                .containsEntry("col.2", "date")
                .containsEntry("source", "our laboratory");
        // not in another herd
        assertThat(form(read(chosen(herd(), "A,B,C\n7,2025-11-12,27.4\n")))).containsEntry("col.0", "");
    }

    // 17 kg are 37.5 lb, no odd weight by itself: beside the herd's last test it is asked about, and nothing is guessed
    @Test
    void weightsThatAreTheLastTestInPoundsAreAskedAbout() {
        TestHerd herd = herd().withTestDay("7", "2025-10-12", 17).withTestDay("8", "2025-10-12", 17);
        assertThat(form(read(chosen(herd, "tag,date,milk\n7,2025-11-12,37.5\n8,2025-11-12,37.4\n"))))
                .doesNotContainKey("unit.milk_kg");
        assertThat(form(read(chosen(herd, "tag,date,milk\n7,2025-11-12,18\n8,2025-11-12,16\n"))))
                .containsEntry("unit.milk_kg", "kg");
    }

    @Test
    void unitsThatLookWrongAreAskedWithTheEvidenceAndConvertedOnlyAsSaid() {
        TestHerd herd = herd();
        String path = chosen(herd, "tag,date,milk,scc\n7,2025-11-12,62.4,84000\n8,2025-11-12,58,120000\n");
        Map<String, String> fields = form(read(path));
        assertThat(fields).doesNotContainKeys("unit.milk_kg", "unit.scc_thousand_per_ml");
        Response asked = check(path, fields);
        assertThat(asked.statusCode()).isEqualTo(422);
        assertThat(asked.asString())
                .contains("In which unit is the column &quot;milk&quot;?", "from 58 to 62.4", "Still to be answered");
        fields.put("unit.milk_kg", "lb");
        fields.put("unit.scc_thousand_per_ml", "per-ml");
        String trial = rows(check(path, fields));
        // 62.4 lb are 28.304 kg (1 lb is 0.45359237 kg, agreement of 1959; from memory), to the gram
        assertThat(trial).contains("Milk, kg, from pounds", "28.304", "84.000");
        rows(take(path));
        assertThat(test(herd, 0).at("/milkKg").asDouble()).isEqualTo(28.304);
        assertThat(test(herd, 0).at("/sccThousandPerMl").asDouble()).isEqualTo(84);
        // a heading that names another unit is asked too, though the values would do
        String byHeading = chosen(herd, "tag,date,milk l\n7,2025-11-13,27.4\n");
        assertThat(read(byHeading)).contains("Its heading names another unit.");
        assertThat(check(byHeading, form(read(byHeading))).statusCode()).isEqualTo(422);
    }

    @Test
    void daysThatCouldBeReadInTwoWaysAreAskedAndThoseThatCannotAreNot() {
        TestHerd herd = herd();
        String doubtful = chosen(herd, "tag,date,milk\n7,03/04/2025,27.4\n");
        assertThat(form(read(doubtful))).doesNotContainKey("dates");
        assertThat(check(doubtful, form(read(doubtful))).asString()).contains("One is written 03/04/2025");
        String plain = chosen(herd, "tag,date,milk\n7,12.11.2025,27.4\n8,13.11.2025 00:00:00,30\n");
        Map<String, String> fields = form(read(plain));
        assertThat(fields).containsEntry("dates", "day-first");
        rows(check(plain, fields));
        rows(take(plain));
        assertThat(test(herd, 0).at("/date").asText()).isEqualTo("2025-11-12");
    }

    @Test
    void whatIsWrongWithARowIsToldWithItsLineAndTheFilesOwnNames() {
        TestHerd herd = herd();
        String path = chosen(
                herd,
                "Ear tag,Day,Milk yield,Remarks\n7,2025-11-12,27.4,x\n99,2025-11-12,20,x\n8,2025-11-12,27\n8,2025-13-12,27,x\n8,2025-11-12,=1+1,x\n");
        Map<String, String> fields = form(read(path));
        assertThat(fields).containsEntry("col.3", "");
        String trial = rows(check(path, fields));
        assertThat(count(trial, "New")).isEqualTo("1");
        assertThat(count(trial, "Refused")).isEqualTo("4");
        assertThat(trial)
                .contains("<th scope=\"row\" class=\"n\">3</th>", "is not known in this herd")
                .contains("<th scope=\"row\" class=\"n\">4</th>", "has 3 cells (expected 4)")
                .contains("<bdi>Day</bdi></td><td><bdi>2025-13-12</bdi>")
                .contains("<bdi>Milk yield</bdi></td><td><bdi>=1+1</bdi>");
        rows(take(path));
        assertThat(herd.get("/test-days").expecting(200).at("/items")).hasSize(1);
    }

    @Test
    void refusedRowsAreHadAsAFileWithLineAndReasonAndComeInOnceMended() {
        TestHerd herd = herd();
        String path = chosen(
                herd, "Ear tag;Day;Milk yield\n7;2025-11-12;27.4\n99;2025-11-12;20\n8;2025-11-12\n8;2025-13-12;=1+1\n");
        String trial = rows(check(path, form(read(path))));
        assertThat(trial).contains(path + "/refused.csv");
        assertThat(trial.indexOf("class=\"n\">3<"))
                .as("told in the order of the file")
                .isPositive()
                .isLessThan(trial.indexOf("class=\"n\">4<"));
        Response refused = browser().get(path + "/refused.csv");
        assertThat(refused.statusCode()).isEqualTo(200);
        assertThat(refused.header("Content-Disposition")).contains("attachment").contains("refused-rows.csv");
        String[] lines = refused.asString().split("\r\n");
        assertThat(lines).hasSize(4);
        assertThat(lines[0]).isEqualTo("\uFEFFline;why;Ear tag;Day;Milk yield");
        assertThat(lines[1])
                .startsWith("3;")
                .contains("is not known in this herd")
                .endsWith(";99;2025-11-12;20");
        assertThat(lines[2]).isEqualTo("4;has 2 cells (expected 3);8;2025-11-12");
        // a spreadsheet would take the last cell for a formula
        assertThat(lines[3]).startsWith("5;").contains("Day: ", "Milk yield: ").endsWith(";8;2025-13-12;'=1+1");
        rows(take(path));
        String mended = chosen(herd, lines[0] + "\n" + lines[1].replace(";99;", ";8;") + "\n");
        assertThat(read(mended))
                .contains("As you said the last time", "the columns line and why, which were put before yours");
        String again = rows(check(mended, form(read(mended))));
        assertThat(count(again, "New")).isEqualTo("1");
        assertThat(again).doesNotContain("refused.csv");
        assertThat(browser().get(mended + "/refused.csv").asString().split("\r\n"))
                .hasSize(1);
    }

    @Test
    void refusedRowsComeInAgainByWhatWasSaidOfTheirFile() {
        TestHerd herd = herd();
        // a heading no word list knows, pounds, days of one's own, and a weight that looks like a formula
        String path = chosen(herd, "=A;B;C\n7;12.11.2025;60,4\n99;13.11.2025;-44\n7;14.11.2025\n7;14.11.2025;3;x\n");
        Map<String, String> said = form(read(path));
        said.put("kind", "test-days");
        said.put("kindShown", "test-days");
        said.put("col.0", "animal_id");
        said.put("col.1", "date");
        said.put("col.2", "milk_kg");
        said.put("unit.milk_kg", "lb");
        said.put("dates", "day-first");
        said.put("decimal", "comma");
        said.put("scheme", TestHerd.SCHEME);
        String trial = rows(check(path, said));
        assertThat(count(trial, "Refused")).isEqualTo("3");
        String[] lines = refused(path);
        assertThat(lines).hasSize(4);
        assertThat(lines[0]).isEqualTo("\uFEFFline;why;'=A;B;C");
        assertThat(lines[1]).startsWith("3;").endsWith(";99;13.11.2025;'-44");
        assertThat(lines[2]).isEqualTo("4;has 2 cells (expected 3);7;14.11.2025");
        assertThat(lines[3]).isEqualTo("5;has 4 cells (expected 3);7;14.11.2025;3;x");
        rows(take(path));
        String mended =
                chosen(herd, lines[0] + "\n" + lines[1].replace(";99;", ";8;").replace("'-44", "44") + "\n");
        Map<String, String> remembered = form(read(mended));
        assertThat(remembered)
                .containsEntry("col.0", "")
                .containsEntry("col.1", "")
                .containsEntry("col.2", "animal_id")
                .containsEntry("col.4", "milk_kg")
                .containsEntry("unit.milk_kg", "lb")
                .containsEntry("dates", "day-first");
        assertThat(count(rows(check(mended, remembered)), "New")).isEqualTo("1");
        // what was said of the first file stands as it was
        assertThat(form(read(chosen(herd, "=A;B;C\n7;12.12.2025;60,4\n")))).containsEntry("col.0", "animal_id");
    }

    @Test
    void oneMarkAgainstFormulasIsTakenOffAndNoMore() {
        TestHerd herd = herd();
        String path = chosen(herd, "Ear tag,Name\n7,''-Bella\n8,'-Mimosa\n");
        Map<String, String> said = form(read(path));
        said.put("kind", "animals");
        said.put("kindShown", "animals");
        said.put("col.0", "animal_id");
        said.put("col.1", "name");
        said.put("scheme", TestHerd.SCHEME);
        rows(check(path, said));
        rows(take(path));
        assertThat(herd.getAnimal("7", "").textAt("/record/name")).isEqualTo("'-Bella");
        assertThat(herd.getAnimal("8", "").textAt("/record/name")).isEqualTo("-Mimosa");
    }

    @Test
    void whatIsRefusedAgainComesInByWhatWasSaidOfTheFirstFile() {
        TestHerd herd = herd();
        String path = chosen(herd, "Ear tag;Day;B\n99;2025-11-12;20\n98;2025-11-12;21\n");
        Map<String, String> said = form(read(path));
        said.put("kind", "test-days");
        said.put("kindShown", "test-days");
        said.put("col.2", "milk_kg");
        rows(check(path, said));
        String[] lines = refused(path);
        String mended = chosen(herd, String.join("\n", lines).replace(";99;", ";8;") + "\n");
        rows(check(mended, form(read(mended))));
        String[] again = refused(mended);
        assertThat(again).hasSize(2);
        assertThat(again[0]).isEqualTo(lines[0]).isEqualTo("\uFEFFline;why;Ear tag;Day;B");
        assertThat(again[1]).startsWith("3;").endsWith(";98;2025-11-12;21");
        String last = chosen(herd, String.join("\n", again).replace(";98;", ";7;") + "\n");
        assertThat(form(read(last))).containsEntry("col.2", "animal_id").containsEntry("col.4", "milk_kg");
    }

    @Test
    void refusedRowsOfAFileWithoutAHeadingComeInAgainToo() {
        TestHerd herd = herd();
        String path = chosen(herd, "7,2025-11-12,27.4\n99,2025-11-12,20\n");
        Map<String, String> said = form(read(path));
        said.put("kind", "test-days");
        said.put("kindShown", "test-days");
        said.put("col.0", "animal_id");
        said.put("col.1", "date");
        said.put("col.2", "milk_kg");
        said.put("scheme", TestHerd.SCHEME);
        rows(check(path, said));
        String[] lines = refused(path);
        assertThat(lines[0]).isEqualTo("\uFEFFline,why,\"#1\",\"#2\",\"#3\"");
        rows(take(path));
        String mended = chosen(herd, lines[0] + "\n" + lines[1].replace(",99,", ",8,") + "\n");
        String again = rows(check(mended, form(read(mended))));
        assertThat(count(again, "New")).isEqualTo("1");
        assertThat(count(again, "Refused")).isEqualTo("0");
        Map<String, String> first = form(read(chosen(herd, "7,2025-11-13,27.4\n8,2025-11-13,20\n")));
        assertThat(first).containsEntry("col.0", "animal_id").containsEntry("header", "no");
    }

    @Test
    void whoGoesThroughManyFilesLosesTheFirstAndIsNotTurnedAway() {
        TestHerd herd = herd();
        String first = chosen(herd, TESTS);
        String last = first;
        for (int file = 0; file < 25; file++) {
            last = chosen(herd, TESTS);
        }
        assertThat(browser().get(first).statusCode()).isEqualTo(410);
        assertThat(browser().get(last).statusCode()).isEqualTo(200);
    }

    private static String[] refused(String path) {
        return browser().get(path + "/refused.csv").asString().split("\r\n");
    }

    @Test
    void refusedRowsOfAnotherHerdOrKeyAreNotThere() {
        TestHerd herd = herd();
        String path = chosen(herd, "Ear tag;Day;Milk yield\n99;2025-11-12;20\n");
        rows(check(path, form(read(path))));
        assertThat(refused(path)).hasSize(2);
        String another = TestHerd.key("write", TestHerd.make().code(), null);
        String sameHerd = TestHerd.key("write", herd.code(), null);
        String nowhere = path.replaceFirst("import/.*", "import/none");
        for (String key : new String[] {another, sameHerd}) {
            Response asked = given().header("X-API-Key", key).get(path + "/refused.csv");
            assertThat(asked.statusCode()).isEqualTo(404);
            assertThat(asked.asString()).doesNotContain("2025-11-12");
            assertThat(given().header("X-API-Key", key)
                            .get(nowhere + "/refused.csv")
                            .statusCode())
                    .isEqualTo(404);
        }
        String elsewhere = path.replace(herd.code(), TestHerd.make().code());
        assertThat(browser().get(elsewhere + "/refused.csv").statusCode()).isEqualTo(404);
    }

    @Test
    void whatIsNoTableIsSaidInWords() throws IOException {
        TestHerd herd = herd();
        Map<String, byte[]> bad = new LinkedHashMap<>();
        bad.put("The file is empty.", new byte[0]);
        bad.put("is empty", "\r\n \r\n".getBytes(StandardCharsets.UTF_8));
        bad.put("This is a workbook", workbook());
        bad.put("This is a document", "%PDF-1.7".getBytes(StandardCharsets.UTF_8));
        bad.put("This is no text", new byte[] {1, 2, 3, 0, 5});
        bad.put("There is a heading and no row", "tag,date,milk\r\n".getBytes(StandardCharsets.UTF_8));
        bad.put("Line 2: A quotation mark", "tag,date\n\"7,2025-11-12\n".getBytes(StandardCharsets.UTF_8));
        for (Map.Entry<String, byte[]> file : bad.entrySet()) {
            Response answer = choose(herd, "bad.csv", file.getValue());
            assertThat(answer.statusCode()).as(file.getKey()).isEqualTo(422);
            assertThat(answer.asString()).contains(file.getKey()).contains("name=\"file\"");
        }
    }

    private static byte[] workbook() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("xl/workbook.xml"));
            zip.write("<workbook/>".getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }

    @Test
    void anotherEncodingIsAskedWithALineInEach() {
        TestHerd herd = herd();
        String text = "tag;name\n31;M\u00fccke\n";
        String path = chosen(herd, text.getBytes(Charset.forName("windows-1252")));
        assertThat(read(path)).contains("31;M\u00fccke", "Western European").contains("name=\"encoding\"");
        Response read =
                browser().contentType(FORM).body("encoding=windows-1252").post(path);
        assertThat(read.statusCode()).isEqualTo(303);
        Map<String, String> fields = form(read(path));
        assertThat(fields).containsEntry("kind", "animals").containsEntry("col.1", "name");
        rows(check(path, fields));
        rows(take(path));
        assertThat(herd.getAnimal("31", "").expecting(200).textAt("/record/name"))
                .isEqualTo("M\u00fccke");
        String wide = chosen(herd, "\uFEFFtag\tname\n32\tZo\u00eb\n".getBytes(StandardCharsets.UTF_16LE));
        assertThat(read(wide)).contains("Zo\u00eb");
    }

    @Test
    void aFileWithoutAHeadingIsAskedAbout() {
        TestHerd herd = herd();
        String path = chosen(herd, "7,2025-11-12,27.4\n8,2025-11-12,30\n");
        String html = read(path);
        assertThat(html).contains("Is the first line a heading?", "<bdi>#1</bdi>");
        Map<String, String> fields = form(html);
        assertThat(fields).containsEntry("header", "no");
        fields.put("kind", "test-days");
        fields.put("kindShown", "test-days");
        fields.put("col.0", "animal_id");
        fields.put("col.1", "date");
        fields.put("col.2", "milk_kg");
        fields.put("scheme", "example.eartag");
        assertThat(count(rows(check(path, fields)), "New")).isEqualTo("2");
    }

    @Test
    void aFileIsSeenByWhoChoseItOnly() {
        TestHerd herd = herd();
        String path = chosen(herd, TESTS);
        String other = TestHerd.key("read write", herd.code(), null);
        Response notTheirs = given().header("X-API-Key", other).get(path);
        assertThat(notTheirs.statusCode()).isEqualTo(410);
        assertThat(notTheirs.asString()).contains("no longer here");
        String reader = TestHerd.key("read", herd.code(), null);
        assertThat(given().header("X-API-Key", reader)
                        .get("/pages/herds/" + herd.code() + "/import")
                        .asString())
                .contains("This key may only read")
                .doesNotContain("type=\"file\"");
        assertThat(given().header("X-API-Key", reader)
                        .multiPart("file", "x.csv", TESTS.getBytes(StandardCharsets.UTF_8))
                        .post("/pages/herds/" + herd.code() + "/import")
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void aLongFileIsTakenWhileOneLooksOn() {
        TestHerd herd = TestHerd.make().withAnimal("7");
        StringBuilder text = new StringBuilder("tag,started at,milking,milk\n");
        java.time.LocalDateTime at = java.time.LocalDateTime.of(2000, 1, 1, 6, 0);
        for (int row = 0; row < LONG_FILE; row++) {
            // some fail, so that the list of findings is long too
            text.append(row % 50 == 0 ? "99," : "7,")
                    .append(at.plusMinutes(90L * row).toString().replace('T', ' '))
                    .append(",am,12.5\n");
        }
        String path = chosen(herd, text.toString());
        Map<String, String> fields = form(read(path));
        assertThat(fields).containsEntry("kind", "milkings").containsEntry("col.1", "started_at");
        Response begun = check(path, fields);
        assertThat(begun.statusCode()).isEqualTo(303);
        assertThat(browser().get(path + "/progress").jsonPath().getInt("total")).isEqualTo(LONG_FILE);
        String trial = rows(begun);
        assertThat(count(trial, "New")).isEqualTo(Integer.toString(LONG_FILE - LONG_FILE / 50));
        assertThat(count(trial, "Refused")).isEqualTo(Integer.toString(LONG_FILE / 50));
        assertThat(trial).contains("more findings are not shown");
    }
}
