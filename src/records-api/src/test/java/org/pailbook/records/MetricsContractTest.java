package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The meters of the service: who may read them, and that they count what happened. */
@QuarkusTest
class MetricsContractTest {
    private static Answer meters(String key) {
        return RawRequest.get("/q/metrics").keyed("X-API-Key", key).send(Map.of());
    }

    private static double meter(String start) {
        return meters(DatabaseForTests.ADMIN_KEY)
                .expecting(200)
                .text()
                .lines()
                .filter(line -> line.startsWith(start))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
                .sum();
    }

    @Test
    void onlyAdministratorsReadThem() {
        Answer nobody = new RawRequest("GET", "/q/metrics", List.of(), null)
                .send(Map.of())
                .expecting(401);
        assertThat(nobody.textAt("/code")).isEqualTo("not-authenticated");
        assertThat(nobody.header("WWW-Authenticate")).isPresent();
        assertThat(meters("guess").expecting(401).textAt("/code")).isEqualTo("not-authenticated");
        assertThat(meters(TestHerd.key("read write", "*", null)).expecting(403).textAt("/code"))
                .isEqualTo("scope-missing");
        // they count the rows of every herd
        String ofOneHerd = TestHerd.key("admin", TestHerd.make().code(), null);
        assertThat(meters(ofOneHerd).expecting(403).textAt("/code")).isEqualTo("scope-missing");
        RawRequest.get("/q/metrics")
                .keyed("Authorization", "Bearer " + DatabaseForTests.ADMIN_KEY)
                .send(Map.of())
                .expecting(200);
    }

    @Test
    void rowsTakenAndRefusedProjectionsAndSummariesAreCounted() {
        double taken = meter("pailbook_rows_taken_total{kind=\"test-days\",outcome=\"created\"");
        double refused = meter("pailbook_rows_refused_total{kind=\"test-days\"");
        double projections = meter("pailbook_projection_seconds_count");
        double summaries = meter("pailbook_herd_summary_seconds_count");
        TestHerd herd = TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 2);
        herd.bulk(
                        "test-days",
                        TestHerd.NDJSON,
                        TestHerd.testDayJson("A1", "2025-09-10", 27.4) + "\n"
                                + TestHerd.testDayJson("A1", "2025-10-10", 26.4) + "\n"
                                + TestHerd.testDayJson("A1", "2025-11-10", -1))
                .expecting(200);
        herd.getAnimal("A1", "/lactations/current?asOf=2025-11-30").expecting(200);
        herd.get("/summary?asOf=2025-11-30").expecting(200);
        assertThat(meter("pailbook_rows_taken_total{kind=\"test-days\",outcome=\"created\""))
                .isEqualTo(taken + 2);
        assertThat(meter("pailbook_rows_refused_total{kind=\"test-days\"")).isEqualTo(refused + 1);
        assertThat(meter("pailbook_projection_seconds_count")).isEqualTo(projections + 1);
        assertThat(meter("pailbook_herd_summary_seconds_count")).isEqualTo(summaries + 1);
    }

    @Test
    void noMeterNamesAHerdACowOrASecret() {
        TestHerd herd = TestHerd.make().withAnimal("SECRET-COW");
        herd.getAnimal("SECRET-COW", "/summary").expecting(200);
        new RawRequest("GET", "/feeds/SECRET-FEED/animals.csv", List.of(), null)
                .send(Map.of())
                .expecting(404);
        assertThat(meters(DatabaseForTests.ADMIN_KEY).text())
                .doesNotContain(herd.code())
                .doesNotContain("SECRET-COW")
                .doesNotContain("SECRET-FEED");
    }
}
