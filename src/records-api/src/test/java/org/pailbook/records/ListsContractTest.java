package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Pages of lists: linked, counted, and bound to the filters they were asked for with. */
@QuarkusTest
class ListsContractTest {
    private static TestHerd herd() {
        TestHerd herd = TestHerd.make().withAnimal("A1").withAnimal("A2").withAnimal("A3");
        for (int month = 1; month <= 6; month++) {
            herd.withTestDay("A1", "2026-0" + month + "-10", 25).withTestDay("A2", "2026-0" + month + "-10", 20);
        }
        return herd;
    }

    @Test
    void theNextPageIsInTheLinkHeaderTooAndTheLastHasNone() {
        TestHerd herd = herd();
        Answer first = herd.get("/test-days?limit=10&count=true").expecting(200);
        assertThat(first.header("Link")).contains("<" + first.textAt("/next") + ">; rel=\"next\"");
        assertThat(first.countAt("/total")).isEqualTo(12);
        Answer last = herd.send("GET", first.textAt("/next"), null, null).expecting(200);
        assertThat(last.header("Link")).isEmpty();
        assertThat(last.countAt("/total")).isEqualTo(12);
        assertThat(herd.get("/test-days").at("/total").isMissingNode()).isTrue();
        assertThat(herd.get("/animals?count=true&limit=1").countAt("/total")).isEqualTo(3);
        assertThat(herd.withKey(TestHerd.key("read", herd.code(), null))
                        .send("GET", "/v1/herds?count=true", null, null)
                        .countAt("/total"))
                .isEqualTo(1);
    }

    @Test
    void aCursorGoesWithTheListAndTheFiltersItWasGivenFor() {
        TestHerd herd = herd();
        String next = herd.get("/test-days?from=2026-02-01&limit=3").textAt("/next");
        String cursor = next.replaceAll(".*cursor=([^&]*).*", "$1");
        herd.get("/test-days?from=2026-02-01&limit=5&cursor=" + cursor).expecting(200);
        herd.get("/test-days?count=true&cursor=" + cursor + "&from=2026-02-01").expecting(200);
        char changed = cursor.charAt(3) == 'A' ? 'B' : 'A';
        for (String wrong : List.of(
                "/test-days?from=2026-02-02&cursor=" + cursor,
                "/test-days?cursor=" + cursor,
                "/test-days?from=2026-02-01&animal=example.eartag:A1&cursor=" + cursor,
                "/test-days?from=2026-02-01&includeWithdrawn=true&cursor=" + cursor,
                "/calvings?from=2026-02-01&cursor=" + cursor,
                "/animals?cursor=" + cursor,
                "/test-days?from=2026-02-01&cursor=" + cursor.substring(0, 3) + changed + cursor.substring(4),
                "/test-days?from=2026-02-01&cursor=" + cursor.substring(0, cursor.indexOf('.')),
                "/test-days?from=2026-02-01&cursor=" + cursor + ".x")) {
            assertThat(herd.get(wrong).expecting(400).textAt("/code")).as(wrong).isEqualTo("bad-cursor");
        }
        TestHerd other = herd();
        assertThat(other.get("/test-days?from=2026-02-01&cursor=" + cursor)
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-cursor");
    }

    @Test
    void whatWasWithdrawnIsMarkedWhereItIsAskedFor() {
        TestHerd herd = herd();
        String day = herd.get("/test-days?limit=1").textAt("/items/0/id");
        String animal = herd.get("/animals?limit=1").textAt("/items/0/id");
        for (String path : List.of("/test-days/" + day, "/animals/" + animal)) {
            new RawRequest(
                            "DELETE",
                            herd.path(path),
                            List.of("X-API-Key", DatabaseForTests.ADMIN_KEY, "If-Match", "*"),
                            null)
                    .send(Map.of())
                    .expecting(200);
        }
        for (String list : List.of("/test-days", "/animals")) {
            int marked = 0;
            for (JsonNode item :
                    herd.get(list + "?includeWithdrawn=true&limit=1000").at("/items")) {
                boolean isWithdrawn =
                        List.of(day, animal).contains(item.path("id").asText());
                assertThat(item.path("withdrawn").asBoolean()).isEqualTo(isWithdrawn);
                marked += isWithdrawn ? 1 : 0;
            }
            assertThat(marked).isEqualTo(1);
            assertThat(herd.get(list).text()).doesNotContain("withdrawn");
        }
    }
}
