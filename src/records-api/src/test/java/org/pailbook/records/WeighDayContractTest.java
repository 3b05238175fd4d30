package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The sheet of a weigh day as a browser without script sends it, and as the page's script does. What a browser does with it is in the browser tests. */
@QuarkusTest
class WeighDayContractTest {
    private static final String DAY = "2025-11-12";
    private static final String FORM = "application/x-www-form-urlencoded";

    private static TestHerd herd() {
        return TestHerd.make()
                .withAnimal("2", ",\"name\":\"Zora\"")
                .withAnimal("10", ",\"name\":\"Alma\"")
                .withAnimal("007", ",\"name\":\"<script>alert(1)</script>\"")
                .withAnimal("dry", "")
                .withCalving("2", "2025-08-19", 2)
                .withCalving("10", "2025-09-01", 1)
                .withCalving("007", "2025-07-01", 3)
                .withCalving("dry", "2025-01-05", 1)
                .withDryOff("dry", "2025-10-20")
                .withTestDay("10", "2025-10-15", 24)
                .withTestDay("2", "2025-10-15", 31)
                .withTestDay("007", "2025-10-15", 28);
    }

    private static RequestSpecification browser() {
        return given().urlEncodingEnabled(false)
                .redirects()
                .follow(false)
                .header("X-API-Key", DatabaseForTests.ADMIN_KEY);
    }

    private static String page(TestHerd herd, String rest) {
        return "/pages/herds/" + herd.code() + "/weigh-day" + rest;
    }

    private static String sheet(TestHerd herd) {
        Response answer = browser().get(page(herd, "?asOf=" + DAY));
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.asString();
    }

    /** Ear tags in the order of the sheet, each with our id of the cow. */
    private static Map<String, String> cows(String html) {
        Map<String, String> ids = new LinkedHashMap<>();
        Matcher row = Pattern.compile("data-animal=\"([^\"]+)\" data-tag=\"([^\"]+)\"")
                .matcher(html);
        while (row.find()) {
            ids.put(row.group(2), row.group(1));
        }
        return ids;
    }

    private static Response form(TestHerd herd, String fields) {
        return browser()
                .contentType(FORM)
                .body("asOf=" + DAY + "&unit=kg&page=1&" + fields)
                .post(page(herd, ""));
    }

    private static Response rows(TestHerd herd, String unit, String rows) {
        return browser()
                .contentType("application/json")
                .body("{\"date\":\"" + DAY + "\",\"unit\":\"" + unit + "\",\"milkings\":\"2\",\"rows\":[" + rows + "]}")
                .post(page(herd, "/rows"));
    }

    private static String row(String animal, String cell, String typed, String seen) {
        return "{\"animal\":\"%s\",\"cells\":{\"%s\":{\"typed\":\"%s\",\"seen\":\"%s\"}}}"
                .formatted(animal, cell, typed, seen);
    }

    private static void choose(TestHerd herd, String fields) {
        assertThat(browser()
                        .contentType(FORM)
                        .body("asOf=" + DAY + "&unit=kg&" + fields)
                        .post(page(herd, "/choice"))
                        .statusCode())
                .isEqualTo(303);
    }

    private static List<JsonNode> items(TestHerd herd, String kind) {
        List<JsonNode> items = new ArrayList<>();
        herd.get("/" + kind + "?from=" + DAY + "&to=" + DAY)
                .expecting(200)
                .at("/items")
                .forEach(items::add);
        return items;
    }

    @Test
    void theSheetListsTheCowsInMilkWithWhatIsExpectedOfEach() {
        String html = sheet(herd());
        assertThat(cows(html).keySet()).containsExactly("2", "007", "10");
        assertThat(html)
                .contains("3 cows in milk", "AM, kg", "PM, kg", "inputmode=\"decimal\"")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;")
                .doesNotContain("Third, kg", "<script>alert", "style=", " onload=")
                .containsOnlyOnce("<script src=\"/pages/pailbook.js\" defer></script>");
        Matcher expected = Pattern.compile("data-low=\"([0-9.]+)\" data-high=\"([0-9.]+)\"")
                .matcher(html);
        assertThat(expected.find()).isTrue();
        assertThat(Double.parseDouble(expected.group(1)))
                .isLessThan(31)
                .isLessThan(Double.parseDouble(expected.group(2)));
        Response script = given().get("/pages/pailbook.js");
        assertThat(script.contentType()).startsWith("text/javascript");
        // with the style, what every page may cost a telephone; the script alone
        assertThat(script.asByteArray().length).isLessThan(20_000);
        assertThat(script.asByteArray().length
                        + given().get("/pages/pailbook.css").asByteArray().length)
                .isLessThan(40_000);
        assertThat(browser().get(page(herd(), "?asOf=" + DAY)).header("Content-Security-Policy"))
                .startsWith("default-src 'none'")
                .contains("script-src 'self'")
                .doesNotContain("unsafe");
    }

    @Test
    void theExpectationOfADayDoesNotKnowTheWeightOfThatDay() {
        TestHerd herd = herd();
        String before = sheet(herd);
        herd.withTestDay("2", DAY, 11);
        assertThat(bands(sheet(herd))).isEqualTo(bands(before));
    }

    private static List<String> bands(String html) {
        return Pattern.compile("data-low=\"[^\"]*\" data-high=\"[^\"]*\"")
                .matcher(html)
                .results()
                .map(found -> found.group())
                .toList();
    }

    @Test
    void aPlainFormStoresEachMilkingAsAMilkingAndASecondSendingChangesNothing() {
        TestHerd herd = herd();
        Map<String, String> cows = cows(sheet(herd));
        String fields = "milkings=2&c." + cows.get("2") + ".am=14%2C2&s." + cows.get("2") + ".am=&c." + cows.get("2")
                + ".pm=12.9&c." + cows.get("10") + ".am=&s." + cows.get("10") + ".am=";
        Response saved = form(herd, fields);
        assertThat(saved.statusCode()).as(saved.asString()).isEqualTo(303);
        assertThat(saved.header("Location")).endsWith("&saved=1");
        List<JsonNode> milkings = items(herd, "milkings");
        assertThat(milkings).hasSize(2);
        assertThat(milkings.stream()
                        .map(one -> one.at("/record/milkingOfDay").asText()
                                + one.at("/record/milkKg").asDouble()))
                .containsExactlyInAnyOrder("am14.2", "pm12.9");
        assertThat(milkings.get(0).at("/record/milkingsPerDay").asDouble()).isEqualTo(2);
        assertThat(form(herd, fields).statusCode()).isEqualTo(303);
        assertThat(items(herd, "milkings").stream()
                        .map(one -> one.at("/version").asInt()))
                .containsOnly(1);
        assertThat(sheet(herd)).contains("value=\"14.2\"", "value=\"12.9\"");
        assertThat(herd.getAnimal("2", "/lactations/current?asOf=" + DAY)
                        .expecting(200)
                        .textAt("/accumulated/inputs/lastTest"))
                .isEqualTo(DAY);
    }

    @Test
    void whatIsWrongIsToldBesideItsFieldAndNothingTypedIsLost() {
        TestHerd herd = herd();
        Map<String, String> cows = cows(sheet(herd));
        Response answer = form(
                herd,
                "milkings=2&c." + cows.get("2") + ".am=1,400.5&c." + cows.get("10") + ".am=412&c." + cows.get("007")
                        + ".am=13.5");
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.asString())
                .contains(
                        "value=\"1,400.5\"",
                        "AM, kg: is not a number",
                        "value=\"412\"",
                        "cannot be right",
                        "value=\"13.5\"")
                .contains("2 fields are not saved");
        assertThat(items(herd, "milkings")).hasSize(1);
    }

    @Test
    void theWholeDayAndItsSampleAreOneTestDayWhichIsTakenBackWhenItsFieldsAreEmptied() {
        TestHerd herd = herd();
        choose(herd, "order=tag&milkings=1&samples=yes");
        String html = sheet(herd);
        assertThat(html).contains("Day, kg", "Fat, %", "Cells, 1,000").doesNotContain("PM, kg");
        String cow = cows(html).get("2");
        String typed = "milkings=1&c." + cow + ".day=27.4&c." + cow + ".fat=4.1&c." + cow + ".cells=84";
        assertThat(form(herd, typed).statusCode()).isEqualTo(303);
        JsonNode stored = items(herd, "test-days").get(0);
        assertThat(stored.at("/record/milkKg").asDouble()).isEqualTo(27.4);
        assertThat(stored.at("/record/fatPct").asDouble()).isEqualTo(4.1);
        assertThat(stored.at("/record/sccThousandPerMl").asDouble()).isEqualTo(84);
        assertThat(sheet(herd)).contains("value=\"84\"");
        String emptied = "milkings=1&c." + cow + ".day=&s." + cow + ".day=27.4&c." + cow + ".fat=&s." + cow
                + ".fat=4.1&c." + cow + ".cells=&s." + cow + ".cells=84";
        assertThat(form(herd, emptied).statusCode()).isEqualTo(303);
        assertThat(items(herd, "test-days")).isEmpty();
        assertThat(form(herd, typed).statusCode()).isEqualTo(303);
        assertThat(items(herd, "test-days").get(0).at("/version").asDouble()).isEqualTo(3);
    }

    @Test
    void whatSomebodyElseWroteMeanwhileIsShownAndNotOverwritten() {
        TestHerd herd = herd();
        String cow = cows(sheet(herd)).get("2");
        // somebody's scale: another minute than the sheet's
        herd.post(
                        "milkings",
                        "{\"animal\":" + TestHerd.animal("2")
                                + ",\"startedAt\":\"2025-11-12T05:41:00Z\",\"milkingOfDay\":\"am\",\"milkKg\":13.1,\"durationMinutes\":7}")
                .expecting(201);
        Response told = rows(herd, "kg", row(cow, "am", "14,2", ""));
        assertThat(told.statusCode()).as(told.asString()).isEqualTo(200);
        assertThat(told.jsonPath().getString("rows.'" + cow + "'.am.state")).isEqualTo("changed_meanwhile");
        assertThat(told.jsonPath().getString("rows.'" + cow + "'.am.there")).isEqualTo("13.1");
        assertThat(items(herd, "milkings").get(0).at("/record/milkKg").asDouble())
                .isEqualTo(13.1);
        Response plain = form(herd, "milkings=2&c." + cow + ".am=14.2&s." + cow + ".am=");
        assertThat(plain.statusCode()).isEqualTo(422);
        assertThat(plain.asString()).contains("somebody else wrote here", "now it says 13.1", "value=\"14.2\"");
        // having seen it, the typist decides; what the scale said besides stays
        Response mine = rows(herd, "kg", row(cow, "am", "14,2", "13.1"));
        assertThat(mine.jsonPath().getString("rows.'" + cow + "'.am.state")).isEqualTo("saved");
        JsonNode stored = items(herd, "milkings").get(0);
        assertThat(stored.at("/record/milkKg").asDouble()).isEqualTo(14.2);
        assertThat(stored.at("/record/durationMinutes").asDouble()).isEqualTo(7);
        assertThat(stored.at("/record/startedAt").asText()).isEqualTo("2025-11-12T05:41:00Z");
        // the answer was lost on the way: the same once more
        Response again = rows(herd, "kg", row(cow, "am", "14,2", "13.1"));
        assertThat(again.jsonPath().getString("rows.'" + cow + "'.am.state")).isEqualTo("saved");
        assertThat(items(herd, "milkings").get(0).at("/version").asDouble()).isEqualTo(2);
    }

    @Test
    void poundsAreTypedWhereTheHerdSaysSoAndKilogramsAreKept() {
        TestHerd herd = herd();
        herd.post("settings", "{\"validFrom\":\"2025-01-01\",\"milkUnit\":\"lb\"}")
                .expecting(201);
        String html = sheet(herd);
        assertThat(html).contains("AM, lb", "data-unit=\"lb\"");
        String cow = cows(html).get("2");
        Response told = rows(herd, "lb", row(cow, "am", "31.4", ""));
        assertThat(told.jsonPath().getString("rows.'" + cow + "'.am.state")).isEqualTo("saved");
        assertThat(told.jsonPath().getString("rows.'" + cow + "'.am.shown")).isEqualTo("31.4");
        // 1 lb is 0.45359237 kg (agreement of 1959; from memory): 31.4 lb is 14.2428 kg, kept to the gram
        assertThat(items(herd, "milkings").get(0).at("/record/milkKg").asDouble())
                .isEqualTo(14.243);
        // a sheet shown again and sent as it is changes nothing, though it shows fewer digits than are kept
        assertThat(sheet(herd)).contains("value=\"31.4\"", "data-seen=\"14.243\"");
        Response plain = browser()
                .contentType(FORM)
                .body("asOf=" + DAY + "&unit=lb&page=1&milkings=2&c." + cow + ".am=31.4&s." + cow + ".am=14.243")
                .post(page(herd, ""));
        assertThat(plain.statusCode()).isEqualTo(303);
        assertThat(items(herd, "milkings").get(0).at("/version").asDouble()).isEqualTo(1);
    }

    @Test
    void theOrderIsTheOneChosenAndIsRemembered() {
        TestHerd herd = herd();
        choose(herd, "order=name&milkings=3");
        assertThat(cows(sheet(herd)).keySet()).containsExactly("007", "10", "2");
        assertThat(sheet(herd)).contains("Third, kg");
        choose(herd, "order=last&milkings=2");
        assertThat(cows(sheet(herd)).keySet()).containsExactly("10", "2", "007");
        Response unknown = order(herd, "2%0D%0A99%0D%0Adry");
        assertThat(unknown.statusCode()).isEqualTo(422);
        assertThat(unknown.asString()).contains("<bdi>99</bdi>, <bdi>dry</bdi>");
        assertThat(order(herd, "007%0D%0A2%0D%0A").statusCode()).isEqualTo(303);
        assertThat(cows(sheet(herd)).keySet()).containsExactly("007", "2", "10");
        // another key has chosen nothing yet
        String other = TestHerd.key("read write", herd.code(), null);
        assertThat(cows(given().header("X-API-Key", other)
                                .get(page(herd, "?asOf=" + DAY))
                                .asString())
                        .keySet())
                .containsExactly("2", "007", "10");
    }

    private static Response order(TestHerd herd, String tags) {
        return browser()
                .contentType(FORM)
                .body("asOf=" + DAY + "&unit=kg&tags=" + tags)
                .post(page(herd, "/order"));
    }

    @Test
    void theMilkOfTheHerdStandsBesideTheTank() {
        TestHerd herd = herd();
        Map<String, String> cows = cows(sheet(herd));
        form(
                herd,
                "milkings=2&c." + cows.get("2") + ".am=14&c." + cows.get("2") + ".pm=13&c." + cows.get("10")
                        + ".am=12");
        String none = browser().get(page(herd, "/total?asOf=" + DAY)).asString();
        assertThat(none)
                .contains("39.0\u00a0kg", "weighed from 2 of 3 cows", "1 of them have not all their milkings")
                .contains("No tank reading");
        herd.post("tank-pickups", "{\"tank\":\"main\",\"pickedUpAt\":\"2025-11-13T06:30:00Z\",\"milkLitres\":38}")
                .expecting(201);
        // litres at 1.03 kg: 38 L are 39.14 kg, and (39 - 39.14) / 39.14 is -0.36 %
        assertThat(browser().get(page(herd, "/total?asOf=" + DAY)).asString())
                .contains("2025-11-13 06:30", "38 L, about 39\u00a0kg", "-0.4")
                .doesNotContain("explain it", "Used besides the tank");
        // with 4 kg for calves 43.14 kg are accounted for, and (39 - 43.14) / 43.14 is -9.6 %
        herd.post("milk-uses", "{\"date\":\"" + DAY + "\",\"purpose\":\"calves\",\"milkKg\":4}")
                .expecting(201);
        assertThat(browser().get(page(herd, "/total?asOf=" + DAY)).asString())
                .contains("Used besides the tank: 4.0\u00a0kg", "-9.6")
                // one cow is not weighed and one has half her milk: the difference tells nothing of the weights
                .doesNotContain("explain it before the test is held against");
        form(
                herd,
                "milkings=2&c." + cows.get("10") + ".am=12&c." + cows.get("10") + ".pm=11&c." + cows.get("007")
                        + ".am=10&c." + cows.get("007") + ".pm=9");
        herd.post("milk-uses", "{\"date\":\"" + DAY + "\",\"purpose\":\"calves\",\"milkKg\":34}")
                .expecting(200);
        // all weighed, 69 kg; accounted for are 39.14 and 34 kg, and (69 - 73.14) / 73.14 is -5.7 %
        assertThat(browser().get(page(herd, "/total?asOf=" + DAY)).asString())
                .contains("-5.7", "explain it before the test is held against");
        herd.post("tank-pickups", "{\"tank\":\"second\",\"pickedUpAt\":\"2025-11-13T06:40:00Z\",\"milkLitres\":1}")
                .expecting(201);
        // two amounts: neither alone is the milk of the day
        assertThat(browser().get(page(herd, "/total?asOf=" + DAY)).asString())
                .doesNotContain("explain it before", "test day is suspect");
    }

    @Test
    void formsOfOtherSitesAreRefused() {
        TestHerd herd = herd();
        String cow = cows(sheet(herd)).get("2");
        String body = "asOf=" + DAY + "&unit=kg&milkings=2&c." + cow + ".am=9";
        for (Map<String, String> headers : List.of(
                Map.of("Sec-Fetch-Site", "cross-site"),
                Map.of("Sec-Fetch-Site", "same-site"),
                Map.of("Origin", "https://elsewhere.example"),
                Map.of("Origin", "null"))) {
            Response refused =
                    browser().headers(headers).contentType(FORM).body(body).post(page(herd, ""));
            assertThat(refused.statusCode()).as(headers.toString()).isEqualTo(403);
            assertThat(refused.contentType()).startsWith("text/html");
        }
        assertThat(items(herd, "milkings")).isEmpty();
        assertThat(browser()
                        .header("Sec-Fetch-Site", "same-origin")
                        .contentType(FORM)
                        .body(body)
                        .post(page(herd, ""))
                        .statusCode())
                .isEqualTo(303);
    }

    @Test
    void aKeyThatMayOnlyReadSeesTheSheetAndSavesNothing() {
        TestHerd herd = herd();
        String key = TestHerd.key("read", herd.code(), null);
        String html =
                given().header("X-API-Key", key).get(page(herd, "?asOf=" + DAY)).asString();
        assertThat(html).contains("This key may only read", "disabled").doesNotContain("Save all rows", "<script");
        String cow = cows(html).get("2");
        assertThat(given().header("X-API-Key", key)
                        .contentType(FORM)
                        .body("asOf=" + DAY + "&unit=kg&milkings=2&c." + cow + ".am=9")
                        .post(page(herd, ""))
                        .statusCode())
                .isEqualTo(403);
        TestHerd other = TestHerd.make();
        Response notHers = rows(other, "kg", row(cow, "am", "9", ""));
        assertThat(notHers.jsonPath().getString("rows.'" + cow + "'.am.state")).isEqualTo("refused");
    }

    @Test
    void fieldsThatAreNoneAreRefusedInWords() {
        TestHerd herd = herd();
        for (String body : List.of("", "milkings=4", "milkings=2&c.x.udder=3", "milkings=2&c.%zz.am=3")) {
            assertThat(form(herd, body).statusCode()).as(body).isEqualTo(400);
        }
        assertThat(rows(herd, "kg", "{\"animal\":\"x\",\"cells\":{\"am\":{\"typed\":\"3\",\"seen\":\"\"}}}")
                        .jsonPath()
                        .getString("rows.x.am.state"))
                .isEqualTo("refused");
        assertThat(rows(herd, "oz", "").statusCode()).isEqualTo(400);
    }
}
