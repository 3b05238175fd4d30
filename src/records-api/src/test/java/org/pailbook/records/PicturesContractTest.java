package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Lactations drawn over HTTP; what is drawn where is tested in the module of the pictures. */
@QuarkusTest
class PicturesContractTest {
    private static final String DAY = "2025-11-30";

    private static TestHerd herd() {
        return TestHerd.make()
                .withAnimal("007", ",\"name\":\"<script>alert(1)</script>\",\"breed\":\"HOL\"")
                .withCalving("007", "2025-08-19", 2)
                .withTestDay("007", "2025-09-16", 27.4)
                .withTestDay("007", "2025-10-14", 31)
                .withAnimal("heifer");
    }

    @Test
    void aLactationIsDrawnWithTheFigureItsAddressAnswers() {
        TestHerd herd = herd();
        Answer drawn =
                herd.getAnimal("007", "/lactations/2/curve.svg?asOf=" + DAY).expecting(200);
        assertThat(drawn.header("Content-Type").orElseThrow()).startsWith("image/svg+xml");
        double kg = herd.getAnimal("007", "/lactations/2?asOf=" + DAY).numberAt("/projected305/value");
        assertThat(drawn.text())
                .startsWith("<svg ")
                .contains("role=\"img\"")
                .contains(String.format(Locale.ENGLISH, ": %,.0f kg in 305 days", kg))
                .contains("&lt;script&gt;")
                .doesNotContain("<script");
        // two tests and the key
        assertThat(drawn.text().split("<circle")).hasSize(4);
        Answer before = herd.getAnimal("007", "/lactations/current/curve.svg?asOf=2025-10-01")
                .expecting(200);
        assertThat(before.text().split("<circle")).hasSize(3);
        assertThat(given().header("X-API-Key", DatabaseForTests.ADMIN_KEY)
                        .accept("image/avif,image/webp,*/*")
                        .get(herd.path("/animals/" + TestHerd.SCHEME + ":007/lactations/2/curve.svg"))
                        .statusCode())
                .isEqualTo(200);
    }

    // one international pound is 0.45359237 kg exactly (agreement of 1959; from memory)
    private static final double POUND_KG = 0.45359237;

    @Test
    void aHerdShownInPoundsIsDrawnInPoundsAndToldToToolsInKilograms() {
        TestHerd herd = herd();
        herd.post("settings", "{\"validFrom\":\"2025-09-01\",\"milkUnit\":\"lb\"}")
                .expecting(201);
        double kg = herd.getAnimal("007", "/lactations/2?asOf=" + DAY).numberAt("/projected305/value");
        String pounds = String.format(Locale.ENGLISH, ": %,.0f lb in 305 days", kg / POUND_KG);
        assertThat(herd.getAnimal("007", "/lactations/2/curve.svg?asOf=" + DAY)
                        .expecting(200)
                        .text())
                .contains(pounds, ">lb per day<")
                .doesNotContain("kg");
        // not yet set on that day
        assertThat(herd.getAnimal("007", "/lactations/2/curve.svg?asOf=2025-08-31")
                        .expecting(200)
                        .text())
                .contains(">kg per day<")
                .doesNotContain("lb");
    }

    @Test
    void picturesInPagesAreInTheUnitAndTheNumbersOfWhoeverReads() {
        TestHerd herd = herd();
        herd.post("settings", "{\"validFrom\":\"2025-09-01\",\"milkUnit\":\"lb\"}")
                .expecting(201);
        double kg = herd.getAnimal("007", "/lactations/2?asOf=" + DAY).numberAt("/projected305/value");
        String cow = page(herd, "/animals/" + TestHerd.SCHEME + ":007?asOf=" + DAY);
        String picture = cow.substring(cow.indexOf("<svg"), cow.indexOf("</svg>"));
        assertThat(picture)
                .contains(
                        String.format(Locale.ENGLISH, ": %,.0f lb in 305 days", kg / POUND_KG)
                                .replace(',', '\u202f'),
                        ">lb per day<",
                        "Milk in lb per day")
                .doesNotContain("kg");
        String overview = page(herd, "?asOf=" + DAY);
        assertThat(overview).contains("lb of milk of her last test", "Milk of all cows weighed, lb per day");
        assertThat(page(herd, "?unit=kg&asOf=" + DAY)).contains("kg of milk of her last test");
    }

    private static String page(TestHerd herd, String rest) {
        return given().auth()
                .preemptive()
                .basic("anyone", DatabaseForTests.ADMIN_KEY)
                .header("Accept-Language", "de")
                .get("/pages/herds/" + herd.code() + rest)
                .asString();
    }

    @Test
    void whatCannotBeDrawnIsAProblem() {
        TestHerd herd = herd();
        for (String missing : List.of("/lactations/1/curve.svg", "/lactations/current/curve.svg?asOf=2025-08-01")) {
            assertThat(herd.getAnimal("007", missing).expecting(404).textAt("/code"))
                    .as(missing)
                    .isEqualTo("not-found");
        }
        herd.getAnimal("heifer", "/lactations/current/curve.svg").expecting(404);
        assertThat(herd.getAnimal("007", "/lactations/0/curve.svg")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-path");
        assertThat(herd.getAnimal("007", "/lactations/2/curve.svg?model=wood-1967")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("unknown-parameter");
        assertThat(herd.getAnimal("007", "/lactations/2/curve.svg?asOf=soon")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-parameter");
        TestHerd stranger = herd.withKey(TestHerd.key("read", TestHerd.make().code(), null));
        assertThat(stranger.getAnimal("007", "/lactations/2/curve.svg")
                        .expecting(404)
                        .textAt("/detail"))
                .isEqualTo(herd.send("GET", "/v1/herds/none/animals/x:1/lactations/2/curve.svg", null, null)
                        .expecting(404)
                        .textAt("/detail"));
    }
}
