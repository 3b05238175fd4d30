package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** How often a key, a feed and an address may ask, with limits small enough to reach. */
@QuarkusTest
@TestProfile(RateLimitContractTest.SmallLimits.class)
class RateLimitContractTest {
    /** Few of everything; the key that sets the tests up has the same limits, so each test makes few requests with it. */
    public static final class SmallLimits implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "pailbook.requests.per.minute", "30",
                    "pailbook.bulks.per.minute", "2",
                    "pailbook.feed.requests.per.minute", "3",
                    "pailbook.failed.logins.per.minute", "4");
        }
    }

    private static Answer me(String key) {
        return RawRequest.get("/v1/me").keyed("X-API-Key", key).send(Map.of());
    }

    private static void assertLimited(Answer answer, String policy) {
        answer.expecting(429);
        assertThat(answer.textAt("/code")).isEqualTo("rate-limited");
        assertThat(answer.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(Integer.parseInt(answer.header("Retry-After").orElseThrow())).isBetween(1, 60);
        assertThat(answer.header("RateLimit-Policy").orElse("")).contains("\"" + policy + "\";q=");
        assertThat(answer.header("RateLimit").orElse("")).contains("\"" + policy + "\";r=0;t=");
    }

    @Test
    void aKeyThatAsksTooOftenIsSentAwayAndOthersAreNot() {
        String busy = TestHerd.key("read", "*", null);
        String other = TestHerd.key("read", "*", null);
        Answer first = me(busy).expecting(200);
        assertThat(first.header("RateLimit-Policy")).contains("\"requests\";q=30;w=60");
        assertThat(first.header("RateLimit").orElse("")).startsWith("\"requests\";r=29;t=");
        Answer answer = first;
        for (int i = 0; i < 60 && answer.status() == 200; i++) {
            answer = me(busy);
        }
        assertLimited(answer, "requests");
        me(other).expecting(200);
    }

    @Test
    void tablesHaveALimitOfTheirOwn() {
        TestHerd herd = TestHerd.make();
        TestHerd writer = herd.withKey(TestHerd.key("write", herd.code(), null));
        String animal = "{\"identifiers\":[" + TestHerd.animal("A1") + "]}";
        writer.bulk("animals", TestHerd.NDJSON, animal).expecting(200);
        writer.bulk("animals", TestHerd.NDJSON, animal).expecting(200);
        assertLimited(writer.bulk("animals", TestHerd.NDJSON, animal), "bulk");
        writer.post("animals", animal).expecting(200);
    }

    @Test
    void feedsHaveALimitOfTheirOwn() {
        TestHerd herd = TestHerd.make();
        String address = herd.send(
                        "POST",
                        "/v1/feeds",
                        TestHerd.JSON,
                        "{\"herd\":\"%s\",\"report\":\"animals\",\"expiresOn\":\"%s\"}"
                                .formatted(
                                        herd.code(),
                                        java.time.LocalDate.now(java.time.ZoneOffset.UTC)
                                                .plusDays(2)))
                .expecting(201)
                .textAt("/address");
        RawRequest open = new RawRequest("GET", address, List.of(), null);
        for (int i = 0; i < 3; i++) {
            open.send(Map.of()).expecting(200);
        }
        assertLimited(open.send(Map.of()), "feed");
    }

    @Test
    void whoTriesManyUnknownKeysIsSentAwayButNotTheKeysKnownFromThere() {
        String known = TestHerd.key("read", "*", null);
        String goodButNew = TestHerd.key("read", "*", null);
        me(known).expecting(200);
        Answer answer = me("guess-0");
        answer.expecting(401);
        for (int i = 1; i < 20 && answer.status() == 401; i++) {
            answer = me("guess-" + i);
        }
        assertLimited(answer, "failed-logins");
        // or a guess that hits would still be told from one that does not
        assertLimited(me(goodButNew), "failed-logins");
        me(known).expecting(200);
    }
}
