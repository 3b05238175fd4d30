package org.pailbook.records.app;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

/** The rehearsal does what a request does, and leaves nothing of its herd. */
@QuarkusTest
class RehearsalContractTest {
    private static final int COWS = 60;

    @Inject
    Rehearsal rehearsal;

    @ConfigProperty(name = "pailbook.admin.key")
    String adminKey;

    private String get(String path, int status) {
        return given().header("X-API-Key", adminKey)
                .get(path)
                .then()
                .statusCode(status)
                .extract()
                .asString();
    }

    private String turn(int cows, int turn) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        rehearsal.turn(cows, turn, out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static JsonNode summary(String written) throws IOException {
        return new ObjectMapper().readTree(written.substring(written.indexOf('{'), written.lastIndexOf('}') + 1));
    }

    @Test
    void everyCowIsProjectedAndTheWholeHerdMeasured() throws IOException {
        String written = turn(COWS, 1);
        List<String> cows =
                written.lines().filter(line -> line.startsWith("rehearsal,")).toList();
        assertThat(cows).hasSize(COWS);
        JsonNode summary = summary(written);
        assertThat(summary.at("/cowsInMilk"))
                .hasSize(COWS)
                .allSatisfy(cow -> assertThat(cow.at("/interval80/low").doubleValue())
                        .isLessThan(cow.at("/projected305Kg").doubleValue()));
        assertThat(summary.at("/measures/breeding").toString()).contains("\"value\":");
        // numbers of their own each turn, or what is kept of the turn before would be taken
        assertThat(turn(COWS, 2)).isNotEqualTo(written);
        assertThat(turn(COWS, 1)).isEqualTo(written);
    }

    @Test
    void anEmptyHerdTakesItsPlace() throws IOException {
        turn(COWS, 3);
        assertThat(summary(turn(0, 4)).at("/cowsInMilk")).isEmpty();
    }

    @Test
    void nothingOfItIsStoredServedOrCounted() throws IOException {
        String herds = get("/v1/herds", 200);
        double summaries = summariesCounted();
        turn(COWS, 5);
        assertThat(get("/v1/herds", 200)).isEqualTo(herds).doesNotContain("rehearsal");
        get("/v1/herds/rehearsal/summary", 404);
        assertThat(summariesCounted()).isEqualTo(summaries);
    }

    private double summariesCounted() {
        return get("/q/metrics", 200)
                .lines()
                .filter(line -> line.startsWith("pailbook_herd_summary_seconds_count"))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
                .sum();
    }
}
