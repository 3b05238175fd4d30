package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** Keys: their form, how they are sent, rotated, noted, and what is written down of what they do. */
@QuarkusTest
class AccessContractTest {
    @Inject
    DataSource database;

    private static Answer me(String header, String value) {
        return RawRequest.get("/v1/me").keyed(header, value).send(Map.of());
    }

    @Test
    void aKeyHasAShortNameAndASecretOf256Bits() {
        // 43 characters of 62 hold 43 x log2(62) = 256.03 bits
        assertThat(TestHerd.key("read", "*", null)).matches("pb_[0-9A-Za-z]{8}_[0-9A-Za-z]{43}");
    }

    @Test
    void aKeyIsTakenFromEachOfThreeHeaders() {
        String key = TestHerd.key("read", "*", "2099-12-31");
        String basic = Base64.getEncoder().encodeToString(("anybody:" + key).getBytes(StandardCharsets.UTF_8));
        for (Answer answer : List.of(
                me("X-API-Key", key), me("Authorization", "Bearer " + key), me("Authorization", "Basic " + basic))) {
            assertThat(answer.expecting(200).at("/scopes").toString()).isEqualTo("[\"read\"]");
            assertThat(answer.textAt("/herds/0")).isEqualTo("*");
            assertThat(answer.textAt("/expiresOn")).isEqualTo("2099-12-31");
            assertThat(answer.textAt("/keyId")).isNotBlank();
        }
    }

    @Test
    void twoDifferentKeysAreRefusedAndTheSameOneTwiceIsNot() {
        String key = TestHerd.key("read", "*", null);
        String other = TestHerd.key("read", "*", null);
        RawRequest both = RawRequest.get("/v1/me").keyed("X-API-Key", key);
        assertThat(both.with("Authorization", "Bearer " + other)
                        .send(Map.of())
                        .expecting(400)
                        .textAt("/errors/0/code"))
                .isEqualTo("two-keys");
        both.with("Authorization", "Bearer " + key).send(Map.of()).expecting(200);
    }

    @Test
    void aRotatedKeyWorksUnderBothTextsDuringTheOverlapAndUnderTheNewOneOnlyAfterIt() throws SQLException {
        Answer made = TestHerd.newKey("read", "*", null).expecting(201);
        String id = made.textAt("/id");
        String old = made.textAt("/key");
        TestHerd admin = TestHerd.make();
        Answer rotated = admin.send("POST", "/v1/keys/" + id + "/rotate", TestHerd.JSON, "{\"overlapHours\":1}")
                .expecting(200);
        String fresh = rotated.textAt("/key");
        assertThat(fresh).isNotEqualTo(old).startsWith("pb_");
        assertThat(rotated.textAt("/previousWorksUntil")).isNotBlank();
        assertThat(me("X-API-Key", old).expecting(200).textAt("/keyId")).isEqualTo(id);
        assertThat(me("X-API-Key", fresh).expecting(200).textAt("/keyId")).isEqualTo(id);

        try (Connection connection = database.getConnection();
                PreparedStatement past =
                        connection.prepareStatement("update api_key set previous_until = ? where id = ?")) {
            past.setString(1, "2020-01-01T00:00:00.000Z");
            past.setString(2, id);
            assertThat(past.executeUpdate()).isEqualTo(1);
        }
        assertThat(me("X-API-Key", old).expecting(401).textAt("/code")).isEqualTo("key-expired");
        me("X-API-Key", fresh).expecting(200);

        admin.send("DELETE", "/v1/keys/" + id, null, null).expecting(204);
        assertThat(me("X-API-Key", fresh).expecting(401).textAt("/code")).isEqualTo("key-revoked");
        admin.send("POST", "/v1/keys/" + id + "/rotate", TestHerd.JSON, "{}").expecting(404);
    }

    @Test
    void withoutOverlapTheOldTextIsUselessAtOnce() {
        Answer made = TestHerd.newKey("read", "*", null).expecting(201);
        TestHerd.make()
                .send("POST", "/v1/keys/" + made.textAt("/id") + "/rotate", TestHerd.JSON, "{\"overlapHours\":0}")
                .expecting(200);
        me("X-API-Key", made.textAt("/key")).expecting(401);
    }

    @Test
    void onlyAnAdministratorRotates() {
        Answer made = TestHerd.newKey("read write", "*", null).expecting(201);
        TestHerd.make()
                .withKey(made.textAt("/key"))
                .send("POST", "/v1/keys/" + made.textAt("/id") + "/rotate", TestHerd.JSON, "{}")
                .expecting(403);
    }

    @Test
    void theDayAKeyWasLastUsedIsNoted() {
        Answer made = TestHerd.newKey("read", "*", null).expecting(201);
        assertThat(listed(made.textAt("/id"))).doesNotContain("lastUsedOn");
        me("X-API-Key", made.textAt("/key")).expecting(200);
        assertThat(listed(made.textAt("/id"))).contains("\"lastUsedOn\":\"" + LocalDate.now(ZoneOffset.UTC) + "\"");
    }

    private static String listed(String id) {
        for (var key : TestHerd.make()
                .send("GET", "/v1/keys", null, null)
                .expecting(200)
                .at("/items")) {
            if (key.path("id").asText().equals(id)) {
                return key.toString();
            }
        }
        throw new AssertionError("the key is not listed");
    }

    @Test
    void everyAnswerIsSafeFromBrowsersAndCaches() {
        for (String path :
                List.of("/", "/v1/me", "/v1/nowhere", "/nowhere", "/q/health/ready", "/v1/openapi", "/feeds/x/y.csv")) {
            Answer answer = RawRequest.get(path)
                    .keyed("X-API-Key", DatabaseForTests.ADMIN_KEY)
                    .send(Map.of());
            assertThat(answer.header("X-Content-Type-Options")).as(path).contains("nosniff");
            assertThat(answer.header("Referrer-Policy")).as(path).contains("no-referrer");
            assertThat(answer.header("Cache-Control").orElse("")).as(path).contains("no-store");
            assertThat(answer.header("X-Frame-Options")).as(path).contains("DENY");
            assertThat(answer.header("Content-Security-Policy").orElse(""))
                    .as(path)
                    .contains("default-src 'none'");
        }
    }

    @Test
    void eachWriteLeavesOneLineThatSaysWhoAndWhatAndNoSecret() {
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 2);
        Answer made = TestHerd.newKey("read write", herd.code(), null).expecting(201);
        TestHerd writer = herd.withKey(made.textAt("/key"));
        List<String> lines = new ArrayList<>();
        try (LogTap tap = new LogTap("", lines)) {
            writer.bulk(
                            "test-days",
                            TestHerd.NDJSON,
                            TestHerd.testDayJson("A1", "2025-09-10", 27.4) + "\n"
                                    + TestHerd.testDayJson("A1", "2025-10-10", -1))
                    .expecting(200);
            writer.post("test-days", TestHerd.testDayJson("A1", "2025-11-10", 22.5))
                    .expecting(201);
            writer.bulk("test-days", TestHerd.NDJSON, TestHerd.testDayJson("A1", "2025-12-10", 20), "?dryRun=true")
                    .expecting(200);
            writer.get("/test-days").expecting(200);
        }
        List<String> audit =
                lines.stream().filter(line -> line.startsWith("write ")).toList();
        String who = "write key=" + made.textAt("/id") + " herd=" + herd.code() + " kind=test-days ";
        assertThat(audit).hasSize(3);
        assertThat(audit.get(0))
                .startsWith(who + "action=bulk status=200 created=1 ")
                .contains("refused=1 ");
        assertThat(audit.get(1)).startsWith(who + "action=post status=201 created=1 ");
        assertThat(audit.get(2)).startsWith(who + "action=bulk status=200").contains("stored=nothing");
        assertThat(String.join("\n", lines)).doesNotContain(made.textAt("/key")).doesNotContain("27.4", "22.5");
    }
}
