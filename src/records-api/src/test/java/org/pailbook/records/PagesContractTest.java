package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;

/** The pages as a browser asks for them. How they look was checked by eye in a browser; here: what they say, and to whom. */
@QuarkusTest
class PagesContractTest {
    private static final String DAY = "2025-11-30";
    private static final String BROWSER = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";
    private static final String LONG_TAG = "0123456789-0123456789-01234567";
    private static final List<String> PAGES =
            List.of("", "/animals", "/projections", "/findings", "/accuracy", "/animals/example.eartag%3A007");

    /** Cows whose names would run, read from the right, or are longer than a telephone is wide; one never tested, one not calved. */
    private static TestHerd herd() {
        return TestHerd.make()
                .withAnimal("007", ",\"name\":\"<script>alert(1)</script>\",\"breed\":\"HOL\"")
                .withCalving("007", "2025-08-19", 2)
                .withTestDay("007", "2025-09-16", 27.4, 4.6)
                .withTestDay("007", "2025-10-14", 31)
                .withAnimal(LONG_TAG, ",\"name\":\"\u05e4\u05e8\u05d4\"")
                .withCalving(LONG_TAG, "2025-11-20", 1)
                .withAnimal("heifer", ",\"name\":\"{t:word('skip')} \\\" onload=\\\"x\"");
    }

    private static RequestSpecification browser(String cookie) {
        RequestSpecification request =
                given().urlEncodingEnabled(false).redirects().follow(false).accept(BROWSER);
        return cookie == null ? request : request.cookie("pailbook-session", cookie);
    }

    private static Response signIn(String key) {
        return browser(null).formParam("key", key).post("/pages/sign-in");
    }

    private static String page(TestHerd herd, String rest) {
        return "/pages/herds/" + herd.code() + rest;
    }

    private static String read(TestHerd herd, String rest) {
        Response answer = given().urlEncodingEnabled(false)
                .accept(BROWSER)
                .header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                .get(page(herd, rest));
        assertThat(answer.statusCode()).as(rest + answer.asString()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith("text/html");
        // one only: of two a browser obeys both, and the page would have no style
        assertThat(answer.headers().getValues("Content-Security-Policy"))
                .singleElement(InstanceOfAssertFactories.STRING)
                .startsWith("default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'");
        return answer.asString();
    }

    @Test
    void whoeverOpensTheRootInABrowserIsLedFromTheKeyToACow() {
        TestHerd herd = herd();
        String key = TestHerd.key("read", herd.code(), null);
        Response root = browser(null).get("/");
        assertThat(root.statusCode()).isEqualTo(303);
        assertThat(root.header("Location")).isEqualTo("/pages");
        assertThat(browser(null).get("/pages").header("Location")).isEqualTo("/pages/sign-in");
        assertThat(browser(null).get("/pages/sign-in").asString()).contains("name=\"key\"");
        Response signedIn = signIn(" " + key + "\n");
        assertThat(signedIn.statusCode()).isEqualTo(303);
        assertThat(signedIn.header("Set-Cookie"))
                .contains("HttpOnly", "SameSite=Strict", "Max-Age=43200", "Path=/pages")
                .doesNotContain("Secure");
        String cookie = signedIn.cookie("pailbook-session");
        assertThat(cookie).doesNotContain(key);
        // one herd only: no need to choose
        String herdPage = browser(cookie).get("/pages").header("Location");
        assertThat(herdPage).contains(page(herd, ""));
        String overview = browser(cookie).get(page(herd, "?asOf=" + DAY)).asString();
        Matcher cow = Pattern.compile("href=\"(/pages/herds/[^\"]*/animals/example.eartag%3A007[^\"]*)\"")
                .matcher(overview);
        assertThat(cow.find()).as(overview).isTrue();
        assertThat(browser(cookie).get(cow.group(1)).asString()).contains("Milk in 305 days");
        // API clients find the addresses as before
        assertThat(given().accept("*/*").get("/").jsonPath().getString("name")).isEqualTo("Pailbook");
        assertThat(given().get("/").contentType()).startsWith("application/json");
    }

    @Test
    void aSessionIsForThePagesOnlyAndEndsWithItsKey() {
        TestHerd herd = herd();
        Answer made = TestHerd.newKey("read", herd.code(), null).expecting(201);
        String cookie = signIn(made.textAt("/key")).cookie("pailbook-session");
        assertThat(browser(cookie).get(page(herd, "")).statusCode()).isEqualTo(200);
        assertThat(browser(cookie).get(herd.path("/reports")).statusCode()).isNotEqualTo(200);
        assertThat(given().cookie("pailbook-session", cookie)
                        .get(herd.path("/summary"))
                        .statusCode())
                .isEqualTo(401);
        for (String forged : List.of(
                cookie.substring(1), cookie + "x", cookie.replace(".", ".1"), "..", ".", "a.b.c", "a.9999999999.")) {
            assertThat(browser(forged).get(page(herd, "")).statusCode())
                    .as(forged)
                    .isEqualTo(303);
        }
        new ReachedHerds().revoke(made.textAt("/id"));
        assertThat(browser(cookie).get(page(herd, "")).statusCode()).isEqualTo(303);
        assertThat(signIn(made.textAt("/key")).statusCode()).isEqualTo(403);
        for (String wrong : List.of("", "no-such-key")) {
            Response refused = signIn(wrong);
            assertThat(refused.statusCode()).isEqualTo(403);
            assertThat(refused.asString()).contains("role=\"alert\"");
            assertThat(refused.header("Set-Cookie")).isNull();
        }
        assertThat(browser(cookie)
                        .contentType("application/x-www-form-urlencoded")
                        .post("/pages/sign-out")
                        .header("Set-Cookie"))
                .contains("Max-Age=0");
        assertThat(given().redirects()
                        .follow(false)
                        .header("X-Forwarded-Proto", "https")
                        .formParam("key", DatabaseForTests.ADMIN_KEY)
                        .post("/pages/sign-in")
                        .header("Set-Cookie"))
                .contains("Secure");
    }

    /** Keys are revoked by an administrator, over the API. */
    private static final class ReachedHerds {
        void revoke(String keyId) {
            given().header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                    .delete("/v1/keys/" + keyId)
                    .then()
                    .statusCode(204);
        }
    }

    @Test
    void everyPageIsWholeWithoutScriptsAndWithoutAnythingFromElsewhere() {
        TestHerd herd = herd();
        for (String rest : PAGES) {
            String html = read(herd, rest + "?asOf=" + DAY);
            assertThat(html)
                    .as(rest)
                    .contains("<html lang=\"en\" dir=\"ltr\">", "<h1>", "</html>")
                    .doesNotContain("<script", "style=", " onload=\"", "NaN")
                    .containsOnlyOnce("<h1>");
            assertThat(html.replace("xmlns=\"http://www.w3.org/2000/svg\"", ""))
                    .as(rest)
                    .doesNotContain("http://");
            for (String link : List.of("href=\"", "src=\"", "action=\"")) {
                // an icon that is nothing, so that browsers do not ask for one
                String linked = html.replace("href=\"data:,\"", "");
                for (String part : linked.split(Pattern.quote(link))) {
                    assertThat(part)
                            .as(rest + " " + link)
                            .startsWith(part.startsWith("<") ? "<" : part.startsWith("#") ? "#" : "/");
                }
            }
        }
        assertThat(read(herd, "/animals?asOf=" + DAY))
                .contains(
                        "&lt;script&gt;alert(1)&lt;/script&gt;", LONG_TAG, "<bdi>\u05e4\u05e8\u05d4</bdi>", "{t:word(");
        Response style = given().get("/pages/pailbook.css");
        assertThat(style.contentType()).startsWith("text/css");
        assertThat(style.asString()).contains("@media print").doesNotContain("http", "@import");
        assertThat(style.asByteArray().length).isLessThan(40_000);
    }

    @Test
    void theCowPageShowsTheFiguresOfTheServiceWithTheirIntervalAndHowTheyWereMade() {
        TestHerd herd = herd();
        Answer lactation =
                herd.getAnimal("007", "/lactations/current?asOf=" + DAY).expecting(200);
        String cow = read(herd, "/animals/example.eartag:007?asOf=" + DAY);
        String expected = String.format(
                Locale.ENGLISH,
                "<strong>%,.0f\u00a0kg</strong> <span class=\"interval\">(%,.0f to %,.0f, 80\u00a0%%)</span>",
                lactation.numberAt("/projected305/value"),
                lactation.numberAt("/projected305/interval80/low"),
                lactation.numberAt("/projected305/interval80/high"));
        assertThat(cow)
                .contains(expected, "<svg ", "role=\"img\"", "As of " + DAY)
                .contains("Method " + lactation.textAt("/projected305/method/name"))
                .contains(lactation.textAt("/projected305/method/source"))
                .contains("2025-09-16", "27.4", "4.60");
        String pounds = read(herd, "/animals/example.eartag:007?unit=lb&asOf=" + DAY);
        assertThat(pounds)
                .contains(String.format(
                        Locale.ENGLISH,
                        "<strong>%,.0f\u00a0lb</strong>",
                        // international avoirdupois pound, from memory
                        lactation.numberAt("/projected305/value") / 0.45359237))
                .contains("unit=lb");
        assertThat(read(herd, "/animals/example.eartag:" + LONG_TAG + "?asOf=" + DAY))
                .contains("Not tested yet.");
        assertThat(read(herd, "/animals/example.eartag:heifer?asOf=" + DAY)).contains("No calving is recorded");
        assertThat(read(herd, "/animals/example.eartag:007?parity=2&asOf=" + DAY))
                .contains("lactation 2, calved 2025-08-19");
    }

    @Test
    void aHerdOfManyCowsIsShownInParts() {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder("animal_scheme,animal_id\n");
        StringBuilder calvings = new StringBuilder("animal_scheme,animal_id,date,parity\n");
        for (int cow = 100; cow < 400; cow++) {
            animals.append("example.eartag,").append(cow).append('\n');
            calvings.append("example.eartag,").append(cow).append(",2025-10-01,1\n");
        }
        herd.bulk("animals", TestHerd.CSV, animals.toString()).expecting(200);
        herd.bulk("calvings", TestHerd.CSV, calvings.toString()).expecting(200);
        for (String list : List.of("/animals", "/projections")) {
            String first = read(herd, list + "?asOf=" + DAY);
            String second = read(herd, list + "?asOf=" + DAY + "&page=2");
            assertThat(rowsOf(first)).as(list).isEqualTo(250);
            assertThat(rowsOf(second)).as(list).isEqualTo(50);
            assertThat(first).contains("Part 1 of 2.", "page=2").doesNotContain("rel=\"prev\"");
            assertThat(second).contains("rel=\"prev\"").doesNotContain("rel=\"next\"");
        }
    }

    private static int rowsOf(String html) {
        return html.split("<th scope=\"row\">").length - 1;
    }

    @Test
    void anEmptyHerdHasPages() {
        TestHerd empty = TestHerd.make();
        for (String rest : List.of("", "/animals", "/projections", "/findings", "/accuracy")) {
            assertThat(read(empty, rest)).contains("<h1>");
        }
        assertThat(read(empty, "")).contains("No test day up to this day.");
    }

    @Test
    void errorsArePagesAndSayTheSameOfWhatIsOutOfReachAndWhatIsNotThere() {
        TestHerd herd = herd();
        String cookie =
                signIn(TestHerd.key("read", TestHerd.make().code(), null)).cookie("pailbook-session");
        Response hidden = browser(cookie).get(page(herd, ""));
        Response absent = browser(cookie).get("/pages/herds/no-such-herd");
        assertThat(hidden.statusCode()).isEqualTo(404);
        assertThat(absent.statusCode()).isEqualTo(404);
        assertThat(withoutRequest(hidden)).isEqualTo(withoutRequest(absent));
        for (String rest :
                List.of("/animals/example.eartag:none", "/animals/example.eartag:007?parity=9", "/nothing")) {
            refused(herd, rest, 404);
        }
        for (String rest : List.of(
                "?asOf=yesterday",
                "?unit=st",
                "?asof=" + DAY,
                "/projections?page=0",
                "/accuracy?page=2",
                "/animals/example.eartag:007?parity=x",
                "?asOf=%3Cscript%3E")) {
            refused(herd, rest, 400);
        }
        assertThat(browser(null)
                        .contentType("application/json")
                        .body("{}")
                        .post("/pages/sign-in")
                        .statusCode())
                .isEqualTo(415);
        String calculating = TestHerd.key("calculate", herd.code(), null);
        assertThat(given().accept(BROWSER)
                        .header("X-API-Key", calculating)
                        .get(page(herd, ""))
                        .statusCode())
                .isEqualTo(403);
        assertThat(given().accept(BROWSER)
                        .header("X-API-Key", "no-such-key")
                        .get(page(herd, ""))
                        .statusCode())
                .isEqualTo(401);
        // outside the pages a problem stays a problem body
        assertThat(given().accept(BROWSER).get("/pagesque").contentType()).startsWith("application/problem+json");
    }

    private static String withoutRequest(Response page) {
        return page.asString().replaceAll("request [0-9A-Za-z-]+", "request");
    }

    private static void refused(TestHerd herd, String rest, int status) {
        Response answer = given().urlEncodingEnabled(false)
                .accept(BROWSER)
                .header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                .get(page(herd, rest));
        assertThat(answer.statusCode()).as(rest).isEqualTo(status);
        assertThat(answer.contentType()).as(rest).startsWith("text/html");
        assertThat(answer.asString()).as(rest).contains("<h1>").doesNotContain("<script", "Exception", "org.pailbook");
    }
}
