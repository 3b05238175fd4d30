package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.pailbook.records.access.OpenSampleHerd;

/** One herd may be read without a key from this machine; of all else nothing is told, not even whether it exists. */
@QuarkusTest
class OpenSampleHerdContractTest {
    @Inject
    OpenSampleHerd open;

    private static Answer nobody(String method, String address, String... headers) {
        byte[] body = method.equals("GET") ? null : "{}".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        return new RawRequest(method, address, List.of(headers), body).send(Map.of());
    }

    @AfterEach
    void close() {
        open.open(null);
    }

    @Test
    void onlyTheOpenHerdIsReadWithoutAKey() {
        TestHerd herd = TestHerd.make();
        nobody("GET", herd.path("")).expecting(401);
        open.open(herd.code());
        nobody("GET", herd.path("")).expecting(200);
        nobody("GET", herd.path("/summary")).expecting(200);
        assertThat(nobody("GET", "/v1/herds").expecting(200).at("/items")).hasSize(1);
        // behind a proxy everybody would look local
        nobody("GET", herd.path(""), "X-Forwarded-For", "192.0.2.1").expecting(401);
    }

    /** A spreadsheet that sends a password only when it is asked for one reaches its herd too. */
    @Test
    void anyOtherHerdIsRefusedWithTheChallengeWhetherItExistsOrNot() {
        TestHerd shown = TestHerd.make();
        TestHerd hidden = TestHerd.make();
        open.open(shown.code());
        for (String rest :
                List.of("", "/test-days", "/summary", "/changes", "/reports/animals.csv", "/no-such-thing")) {
            for (String method : List.of("GET", "POST", "PUT", "DELETE")) {
                Answer there = nobody(method, hidden.path(rest), "Content-Type", TestHerd.JSON);
                Answer missing = nobody(method, "/v1/herds/no-such-herd" + rest, "Content-Type", TestHerd.JSON);
                assertThat(there.status())
                        .as(method + rest)
                        .isEqualTo(missing.status())
                        .isIn(401, 404, 405);
                assertThat(there.textAt("/detail")).isEqualTo(missing.textAt("/detail"));
                assertThat(there.header("WWW-Authenticate").isPresent())
                        .as(method + rest)
                        .isEqualTo(there.status() == 401);
            }
        }
        assertThat(nobody("GET", hidden.path("")).expecting(401).textAt("/code"))
                .isEqualTo("not-authenticated");
    }

    @Test
    void whoSentNoKeyIsAskedForOneAndNotToldWhatAKeyMayDo() {
        TestHerd herd = TestHerd.make();
        open.open(herd.code());
        for (Answer answer : List.of(
                nobody("GET", "/v1/keys"),
                nobody("POST", "/v1/herds", "Content-Type", TestHerd.JSON),
                nobody("POST", "/v1/calculate/corrected-milk", "Content-Type", TestHerd.JSON),
                nobody("POST", herd.path("/animals"), "Content-Type", TestHerd.JSON))) {
            assertThat(answer.expecting(401).textAt("/code")).isEqualTo("not-authenticated");
            assertThat(answer.header("WWW-Authenticate")).isPresent();
        }
    }

    @Test
    void aPageOfAnotherHerdLeadsToTheSignIn() {
        TestHerd shown = TestHerd.make();
        TestHerd hidden = TestHerd.make();
        open.open(shown.code());
        for (String herd : List.of(hidden.code(), "no-such-herd")) {
            Response answer =
                    given().redirects().follow(false).accept("text/html").get("/pages/herds/" + herd);
            assertThat(answer.statusCode()).isEqualTo(303);
            assertThat(answer.header("Location")).isEqualTo("/pages/sign-in");
        }
        assertThat(given().accept("text/html")
                        .get("/pages/herds/" + shown.code())
                        .statusCode())
                .isEqualTo(200);
    }
}
