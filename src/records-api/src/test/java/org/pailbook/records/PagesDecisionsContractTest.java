package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Lists, settings, the first steps, and in which language and unit all is said. */
@QuarkusTest
class PagesDecisionsContractTest {
    private static final String DAY = "2025-11-30";
    private static final String COW = "/animals/example.eartag:007";

    private static TestHerd herd() {
        TestHerd herd = TestHerd.make()
                .withAnimal("007", ",\"name\":\"<script>alert(1)</script>\",\"breed\":\"HOL\"")
                .withCalving("007", "2025-08-19", 2)
                .withTestDay("007", "2025-09-16", 27.4, 4.6)
                .withTestDay("007", "2025-10-14", 31);
        herd.post("treatments", """
                {"animal":%s,"startedOn":"2025-11-20","productName":"<b>tube</b>","prescriber":"Dr. Vet"}""".formatted(TestHerd.animal("007"))).expecting(201);
        herd.post("foremilk-checks", """
                {"animal":%s,"date":"2025-11-29","milkingOfDay":"am","quarter":"RR","finding":"flakes"}""".formatted(TestHerd.animal("007"))).expecting(201);
        herd.post("services", """
                {"animal":%s,"date":"2025-10-25","method":"insemination"}""".formatted(TestHerd.animal("007"))).expecting(201);
        return herd;
    }

    private static RequestSpecification as(String key) {
        return given().urlEncodingEnabled(false)
                .redirects()
                .follow(false)
                .accept("text/html,*/*;q=0.8")
                .header("X-API-Key", key);
    }

    private static String path(TestHerd herd, String rest) {
        return "/pages/herds/" + herd.code() + rest;
    }

    private static String read(TestHerd herd, String rest) {
        Response page = as(DatabaseForTests.ADMIN_KEY).get(path(herd, rest));
        assertThat(page.statusCode()).as(page.asString()).isEqualTo(200);
        return page.asString();
    }

    private static Response send(TestHerd herd, String key, String rest, Map<String, String> form) {
        return as(key).contentType("application/x-www-form-urlencoded; charset=utf-8")
                .formParams(form)
                .post(path(herd, rest));
    }

    @Test
    void whatAMilkerReadsSaysWhyUntilWhenAndWhoSaidSo() {
        TestHerd herd = herd();
        String list = read(herd, "/lists/milk-withheld?asOf=" + DAY);
        assertThat(list)
                .contains("&lt;script&gt;", "right rear", "2025-11-20", "no end entered: not over", "Dr. Vet")
                .contains("that does not say it is safe")
                .doesNotContain("<b>tube");
        Answer api = herd.get("/milk-withheld?asOf=" + DAY).expecting(200);
        assertThat(list).contains(api.textAt("/cows/0/reasons/1/why"));
        String cow = read(herd, COW + "?asOf=" + DAY);
        assertThat(cow).contains(api.textAt("/cows/0/reasons/1/why"));
        assertThat(cow).contains("Foremilk, quarter right rear: flakes", "no end of withholding entered", "Served");
        assertThat(cow).contains(">S</text>", ">T</text>", ">F</text>");
    }

    @Test
    void theListsSayWhatTheApiSays() {
        TestHerd herd = herd();
        Answer worklist = herd.get("/breeding-worklist?asOf=" + DAY).expecting(200);
        // served 36 days before and not checked: the fourth list is "toCheck"
        assertThat(worklist.textAt("/lists/3/list")).isEqualTo("toCheck");
        String page = read(herd, "/lists/to-check?asOf=" + DAY);
        assertThat(page)
                .contains(worklist.textAt("/lists/3/cows/0/why"), worklist.textAt("/lists/3/rule"))
                .doesNotContain("Pregnancy worth");
        assertThat(read(herd, "/lists/culling?asOf=" + DAY)).contains("By milk alone", "for the veterinarian");
        assertThat(read(herd, "/lists/udder-health?asOf=" + DAY)).contains("it diagnoses nothing");
        assertThat(read(herd, "?asOf=" + DAY)).contains("To check for pregnancy: 1", "Milk not for the tank: 1");
        assertThat(as(DatabaseForTests.ADMIN_KEY)
                        .get(path(herd, "/lists/nothing"))
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void withPricesTheCowPageSaysWhatKeepingHerIsWorthAndItsCaution() {
        TestHerd herd = herd();
        assertThat(read(herd, COW + "?asOf=" + DAY)).doesNotContain("Keeping her is worth");
        Response set = send(
                herd,
                DatabaseForTests.ADMIN_KEY,
                "/settings/prices",
                Map.of(
                        "validFrom", "2025-01-01",
                        "currency", "EUR",
                        "milkPricePerKg", "0,48",
                        "heiferPrice", "1900",
                        "cullPrice", "900",
                        "calfPrice", ""));
        assertThat(set.statusCode()).as(set.asString()).isEqualTo(303);
        assertThat(herd.get("/prices").expecting(200).numberAt("/items/0/record/milkPricePerKg"))
                .isEqualTo(0.48);
        assertThat(read(herd, COW + "?asOf=" + DAY))
                .contains("Keeping her is worth", "EUR", "An estimate from recorded data", "no probability");
        assertThat(read(herd, "/lists/culling?asOf=" + DAY)).contains("Worth keeping, EUR");
        assertThat(read(herd, "/lists/to-check?asOf=" + DAY)).contains("Pregnancy worth, EUR", "if she took");
    }

    @Test
    void settingsAreReadByAllAndChangedByWhoMayWrite() {
        TestHerd herd = herd();
        String reader = TestHerd.key("read", herd.code(), null);
        assertThat(as(reader).get(path(herd, "/settings")).asString())
                .contains("Waiting period")
                .doesNotContain("Save settings");
        Map<String, String> pounds = Map.of("validFrom", "2025-01-01", "milkUnit", "lb", "waitingDays", "55");
        assertThat(send(herd, reader, "/settings", pounds).statusCode()).isEqualTo(403);
        assertThat(read(herd, COW + "?asOf=" + DAY)).contains("\u00a0kg</strong>");
        assertThat(send(herd, DatabaseForTests.ADMIN_KEY, "/settings", pounds).statusCode())
                .isEqualTo(303);
        assertThat(read(herd, "/settings?asOf=" + DAY)).contains("55", "the herd", "since 2025-01-01");
        String inPounds = read(herd, COW + "?asOf=" + DAY);
        assertThat(inPounds).contains("\u00a0lb</strong>", "unit=kg").doesNotContain("\u00a0kg</strong>");
        assertThat(read(herd, COW + "?unit=kg&asOf=" + DAY)).contains("\u00a0kg</strong>");
        // what goes over the wire is kg, whatever pages show
        assertThat(herd.getAnimal("007", "/lactations/current?asOf=" + DAY)
                        .expecting(200)
                        .textAt("/projected305/unit"))
                .isEqualTo("kg");
        Response wrong = send(
                herd,
                DatabaseForTests.ADMIN_KEY,
                "/settings",
                Map.of("validFrom", "2025-01-02", "waitingDays", "many", "note", "<i>kept</i>"));
        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(wrong.asString())
                .contains("aria-invalid=\"true\"", "value=\"many\"", "&lt;i&gt;kept&lt;/i&gt;")
                .doesNotContain("<i>kept");
    }

    @Test
    void aCowIsPutInByAForm() {
        TestHerd herd = TestHerd.make();
        Map<String, String> cow = Map.of(
                "tag",
                "0007",
                "cowName",
                "<script>x</script>",
                "breed",
                "HOL",
                "calvedOn",
                "2025-08-19",
                "parity",
                "2",
                "testedOn",
                "2025-09-16",
                "milkKg",
                "27,4",
                "fatPct",
                "4.6",
                "proteinPct",
                "",
                "sccThousandPerMl",
                "");
        Response taken = send(herd, DatabaseForTests.ADMIN_KEY, "/new-cow", cow);
        assertThat(taken.statusCode()).as(taken.asString()).isEqualTo(303);
        assertThat(taken.header("Location")).contains(path(herd, "/animals/eartag%3A0007"));
        assertThat(read(herd, "/animals/eartag%3A0007?asOf=" + DAY))
                .contains("Milk in 305 days", "27.4", "&lt;script&gt;x")
                .doesNotContain("<script");
        Map<String, String> wrong = Map.of("tag", "8", "calvedOn", "2999-01-01", "parity", "two");
        Response refused = send(herd, DatabaseForTests.ADMIN_KEY, "/new-cow", wrong);
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).contains("value=\"two\"", "aria-invalid=\"true\"");
        String reader = TestHerd.key("read", herd.code(), null);
        assertThat(send(herd, reader, "/new-cow", cow).statusCode()).isEqualTo(403);
        assertThat(as(reader).get(path(herd, "/new-cow")).statusCode()).isEqualTo(403);
    }

    @Test
    void aFormAnotherSiteSendsWithARememberedPasswordIsRefused() {
        TestHerd herd = TestHerd.make();
        for (String origin : new String[] {"https://elsewhere.example", "null"}) {
            Response sent = given().redirects()
                    .follow(false)
                    .auth()
                    .preemptive()
                    .basic("anyone", DatabaseForTests.ADMIN_KEY)
                    .header("Origin", origin)
                    .formParam("validFrom", "2025-01-01")
                    .formParam("waitingDays", "55")
                    .post(path(herd, "/settings"));
            assertThat(sent.statusCode()).as(origin).isEqualTo(403);
        }
    }

    @Test
    void wordsAndNumbersFollowWhatTheBrowserAsksFor() {
        TestHerd herd = herd();
        String inPortuguese = in("pt-PT,pt;q=0.9,en;q=0.5", herd, "/lists?asOf=" + DAY);
        assertThat(inPortuguese)
                .contains("<html lang=\"pt\"", "<h1>Listas</h1>")
                // what the file lacks is said in English
                .contains("Milk not for the tank");
        assertThat(in("pt-PT", herd, COW + "?asOf=" + DAY)).contains("Leite em 305 dias", ">27,4<");
        // no words in German, but its decimal comma, and no point that could be read as one
        assertThat(in("de", herd, COW + "?asOf=" + DAY))
                .contains("<html lang=\"en\"", ">27,4<")
                .containsPattern("[0-9]\u202f[0-9]{3}\u00a0kg</strong>");
        for (String english : new String[] {"en", "xx", "*", "not a language;;", "en-GB,pt"}) {
            assertThat(in(english, herd, "/lists?asOf=" + DAY)).as(english).contains("<html lang=\"en\"");
        }
    }

    private static String in(String language, TestHerd herd, String rest) {
        Response page = as(DatabaseForTests.ADMIN_KEY)
                .header("Accept-Language", language)
                .get(path(herd, rest));
        assertThat(page.statusCode()).as(language + page.asString()).isEqualTo(200);
        assertThat(page.header("Vary")).contains("Accept-Language");
        return page.asString();
    }

    @Test
    void aCowOfTwentyLactationsShowsThemAll() {
        TestHerd herd = TestHerd.make().withAnimal("old");
        for (int parity = 1; parity <= 20; parity++) {
            herd.withCalving("old", (2004 + parity) + "-09-01", parity);
        }
        String cow = read(herd, "/animals/example.eartag:old?asOf=" + DAY);
        assertThat(cow).contains("lactation 20, calved 2024-09-01", "parity=1&amp;asOf=", "2005-09-01");
    }

    @Test
    void fiveThousandCowsInMilkAreShownInParts() {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder("animal_scheme,animal_id,breed\n");
        StringBuilder calvings = new StringBuilder("animal_scheme,animal_id,date,parity\n");
        StringBuilder tests = new StringBuilder("animal_scheme,animal_id,date,milk_kg,scc_thousand_per_ml\n");
        for (int cow = 10_000; cow < 15_000; cow++) {
            animals.append("example.eartag,").append(cow).append(",HOL\n");
            calvings.append("example.eartag,").append(cow).append(",2025-10-01,2\n");
            tests.append("example.eartag,").append(cow).append(",2025-11-01,31.5,120\n");
        }
        herd.bulk("animals", TestHerd.CSV, animals.toString()).expecting(200);
        herd.bulk("calvings", TestHerd.CSV, calvings.toString()).expecting(200);
        herd.bulk("test-days", TestHerd.CSV, tests.toString()).expecting(200);
        assertThat(read(herd, "?asOf=" + DAY)).contains("<dd>5000</dd>", "<svg ");
        for (String list : new String[] {"/projections", "/lists/udder-health", "/lists/culling", "/lists/to-breed"}) {
            assertThat(read(herd, list + "?asOf=" + DAY + "&page=20")).as(list).contains("Part 20 of 20.");
        }
    }
}
