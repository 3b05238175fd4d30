package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** A request with an idempotency key: done once, its first answer given again. */
@QuarkusTest
class OnceOnlyContractTest {
    @Inject
    DataSource database;

    private static String newKey() {
        return "test-" + UUID.randomUUID();
    }

    private static Answer post(TestHerd herd, String key, String rest, String mediaType, String body) {
        return herd.send("POST", herd.path(rest), mediaType, body, Map.of("Idempotency-Key", key));
    }

    private static TestHerd herdWithCow() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    @Test
    void aSingleRecordSentAgainIsAnsweredAsTheFirstTime() {
        TestHerd herd = herdWithCow();
        String key = newKey();
        String body = TestHerd.testDayJson("A1", "2025-11-12", 27.4);
        Answer first = post(herd, key, "/test-days", TestHerd.JSON, body).expecting(201);
        assertThat(first.header("Idempotency-Replayed")).isEmpty();
        StoredRows before = StoredRows.in(database);
        Answer again = post(herd, key, "/test-days", TestHerd.JSON, body).expecting(201);
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(again.text()).isEqualTo(first.text());
        for (String header : List.of("Location", "ETag", "Content-Type")) {
            assertThat(again.header(header)).as(header).isEqualTo(first.header(header));
        }
        assertThat(StoredRows.in(database)).isEqualTo(before);
        // the same with the quotes of a structured header, and without a key the state as it is now
        assertThat(post(herd, "\"" + key + "\"", "/test-days", TestHerd.JSON, body)
                        .text())
                .isEqualTo(first.text());
        assertThat(herd.post("test-days", body).expecting(200).textAt("/outcome"))
                .isEqualTo("unchanged");
        // word for word what is sent without a key
        Answer plain = herd.post("test-days", TestHerd.testDayJson("A1", "2025-11-13", 27.4));
        assertThat(plain.json().properties().stream().map(Map.Entry::getKey))
                .containsExactlyElementsOf(first.json().properties().stream()
                        .map(Map.Entry::getKey)
                        .toList());
    }

    @Test
    void aLongBulkAnswerIsGivenAgainRowByRow() {
        TestHerd herd = herdWithCow();
        String key = newKey();
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 9_000; i++) {
            // no such animal, so that each row is told of
            rows.append(TestHerd.testDayJson("N" + i + UUID.randomUUID(), "2025-11-12", 27.4))
                    .append('\n');
        }
        rows.append(TestHerd.testDayJson("A1", "2025-11-12", 27.4)).append('\n');
        Answer first = post(herd, key, "/test-days/bulk", TestHerd.NDJSON, rows.toString())
                .expecting(200);
        assertThat(first.countAt("/created")).isEqualTo(1);
        assertThat(first.countAt("/rowsReported")).isGreaterThanOrEqualTo(9_000);
        Answer again = post(herd, key, "/test-days/bulk", TestHerd.NDJSON, rows.toString())
                .expecting(200);
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(again.text().equals(first.text())).as("same text").isTrue();
        assertThat(herd.bulk("test-days", TestHerd.NDJSON, rows.toString()).countAt("/created"))
                .isZero();
    }

    @Test
    void anotherRequestWithTheKeyIsRefusedAndAnotherCallersKeyIsItsOwn() {
        TestHerd herd = herdWithCow();
        String key = newKey();
        String body = TestHerd.testDayJson("A1", "2025-11-12", 27.4);
        post(herd, key, "/test-days", TestHerd.JSON, body).expecting(201);
        for (Answer other : List.of(
                post(herd, key, "/test-days", TestHerd.JSON, TestHerd.testDayJson("A1", "2025-11-12", 27.5)),
                post(herd, key, "/test-days/bulk", TestHerd.JSON, "[" + body + "]"),
                post(TestHerd.make().withAnimal("A1"), key, "/test-days", TestHerd.JSON, body))) {
            assertThat(other.expecting(422).textAt("/code")).isEqualTo("idempotency-key-reused");
            assertThat(other.textAt("/errors/0/header")).isEqualTo("Idempotency-Key");
        }
        TestHerd stranger = herd.withKey(TestHerd.key("read write", herd.code(), null));
        assertThat(post(stranger, key, "/test-days", TestHerd.JSON, body)
                        .expecting(200)
                        .textAt("/outcome"))
                .isEqualTo("unchanged");
    }

    @Test
    void aRefusedRequestLeavesItsKeyFree() {
        TestHerd herd = herdWithCow();
        String key = newKey();
        post(herd, key, "/test-days", TestHerd.JSON, TestHerd.testDayJson("A1", "2025-11-12", 270))
                .expecting(422);
        post(herd, key, "/test-days", TestHerd.JSON, "{").expecting(400);
        post(herd, key, "/test-days/bulk", TestHerd.JSON, "[{]").expecting(400);
        post(herd, key, "/test-days", TestHerd.JSON, TestHerd.testDayJson("A1", "2025-11-12", 27.0))
                .expecting(201);
    }

    @Test
    void whoeverElseSendsItWhileItRunsIsToldSo() throws Exception {
        TestHerd herd = herdWithCow();
        String key = newKey();
        String body = TestHerd.testDayJson("A1", "2025-11-12", 27.4);
        ExecutorService tools = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Answer>> sends = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                sends.add(() -> post(herd, key, "/test-days", TestHerd.JSON, body));
            }
            List<Answer> got = new ArrayList<>();
            for (Future<Answer> sent : tools.invokeAll(sends)) {
                got.add(sent.get());
            }
            assertThat(got).allMatch(answer -> answer.status() == 201 || answer.status() == 409);
            assertThat(got)
                    .filteredOn(answer -> answer.status() == 201
                            && answer.header("Idempotency-Replayed").isEmpty())
                    .hasSize(1);
        } finally {
            tools.shutdownNow();
        }
        post(herd, key, "/test-days", TestHerd.JSON, body).expecting(201);
    }

    /** What a service leaves behind that runs, or died, on the same database: only its claim can be seen. */
    @Test
    void theClaimOfAnotherServiceHoldsWhileItIsRenewedAndEndsWhenThatServiceDied() throws SQLException {
        TestHerd herd = herdWithCow();
        String body = TestHerd.testDayJson("A1", "2025-11-12", 27.4);
        String running = newKey();
        claim(running, Instant.now().minus(Duration.ofSeconds(60)));
        Answer waits = post(herd, running, "/test-days", TestHerd.JSON, body).expecting(409);
        assertThat(waits.textAt("/code")).isEqualTo("in-progress");
        assertThat(waits.header("Retry-After")).isPresent();
        String dead = newKey();
        claim(dead, Instant.now().minus(Duration.ofSeconds(121)));
        post(herd, dead, "/test-days", TestHerd.JSON, body).expecting(201);
        assertThat(post(herd, dead, "/test-days", TestHerd.JSON, body).header("Idempotency-Replayed"))
                .contains("true");
    }

    @Test
    void anAnswerIsForgottenAfterADay() throws SQLException {
        TestHerd herd = herdWithCow();
        String key = newKey();
        post(herd, key, "/test-days", TestHerd.JSON, TestHerd.testDayJson("A1", "2025-11-12", 27.4))
                .expecting(201);
        try (Connection connection = database.getConnection();
                PreparedStatement age = connection.prepareStatement(
                        "update idempotent_answer set claimed_at = ? where idempotency_key = ?")) {
            age.setString(1, text(Instant.now().minus(Duration.ofHours(25))));
            age.setString(2, key);
            assertThat(age.executeUpdate()).isEqualTo(1);
        }
        post(herd, key, "/test-days", TestHerd.JSON, TestHerd.testDayJson("A1", "2025-11-12", 28.4))
                .expecting(200);
    }

    @Test
    void aHerdIsMadeOnceAndItsFirstAnswerComesAgain() {
        TestHerd herd = herdWithCow();
        String key = newKey();
        String body = "{\"code\":\"o-" + UUID.randomUUID().toString().substring(0, 18)
                + "\",\"name\":\"Once\",\"timeZone\":\"Europe/Dublin\"}";
        Answer first = send(herd, key, "/v1/herds", body).expecting(201);
        Answer again = send(herd, key, "/v1/herds", body).expecting(201);
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(again.text()).isEqualTo(first.text());
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
        assertThat(send(herd, key, "/v1/herds", body.replace("Once", "Twice"))
                        .expecting(422)
                        .textAt("/code"))
                .isEqualTo("idempotency-key-reused");
    }

    /** Kept is the answer without its secret, so that the database never holds one. */
    @Test
    void keysAndFeedsAreMadeOnceAndTheirSecretIsNotShownAgain() {
        TestHerd herd = herdWithCow();
        String label = "once " + UUID.randomUUID();
        Answer made = onceWithoutSecret(
                herd,
                "/v1/keys",
                "{\"label\":\"" + label + "\",\"scopes\":[\"read\"],\"herds\":[\"" + herd.code() + "\"]}",
                201,
                "/key");
        assertThat(herd.send("GET", "/v1/keys", null, null).at("/items").findValuesAsText("label"))
                .containsOnlyOnce(label);
        Answer rotated = onceWithoutSecret(
                herd, "/v1/keys/" + made.textAt("/id") + "/rotate", "{\"overlapHours\":1}", 200, "/key");
        assertThat(rotated.textAt("/key")).isNotEqualTo(made.textAt("/key"));
        herd.withKey(rotated.textAt("/key")).get("").expecting(200);
        onceWithoutSecret(
                herd,
                "/v1/feeds",
                "{\"herd\":\"" + herd.code() + "\",\"report\":\"test-days\",\"expiresOn\":\""
                        + java.time.LocalDate.now().plusDays(30) + "\"}",
                201,
                "/address");
    }

    private Answer onceWithoutSecret(TestHerd herd, String path, String body, int status, String secret) {
        String key = newKey();
        Answer first = send(herd, key, path, body).expecting(status);
        assertThat(first.textAt(secret)).isNotBlank();
        Answer again = send(herd, key, path, body).expecting(status);
        assertThat(again.header("Idempotency-Replayed")).contains("true");
        assertThat(again.textAt("/id")).isEqualTo(first.textAt("/id"));
        assertThat(again.at(secret).isMissingNode()).isTrue();
        assertThat(again.text()).doesNotContain(first.textAt(secret));
        return first;
    }

    private static Answer send(TestHerd herd, String key, String path, String body) {
        return herd.send("POST", path, TestHerd.JSON, body, Map.of("Idempotency-Key", key));
    }

    private void claim(String key, Instant at) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement insert = connection.prepareStatement(
                        "insert into idempotent_answer (key_id, idempotency_key, claim_id, claimed_at)"
                                + " select id, ?, ?, ? from api_key where label like 'administrator%'")) {
            insert.setString(1, key);
            insert.setString(2, UUID.randomUUID().toString());
            insert.setString(3, text(at));
            assertThat(insert.executeUpdate()).isEqualTo(1);
        }
    }

    private static String text(Instant at) {
        return java.time.format.DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'")
                .withZone(java.time.ZoneOffset.UTC)
                .format(at);
    }
}
