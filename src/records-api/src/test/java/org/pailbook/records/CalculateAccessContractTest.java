package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** Who may calculate, that nothing is kept, and that the description of the API tells the truth. */
@QuarkusTest
class CalculateAccessContractTest {
    private static final String[] ADDRESSES = {
        "curve-fit", "accumulated-yield", "corrected-milk", "persistency", "cow-value"
    };

    @Inject
    DataSource database;

    private static Answer post(TestHerd as, String address) {
        String body = address.equals("corrected-milk")
                ? "{\"method\":\"fcm-4\",\"milkKg\":30,\"fatPct\":4}"
                : address.equals("cow-value")
                        ? "{\"cow\":{\"parity\":2,\"daysInMilk\":50}}"
                        : Posts.lactation("", Posts.C01_DAYS, Posts.C01_KG);
        return Posts.calculate(as, address, body);
    }

    @Test
    void onlyAKeyWithTheScopeCalculateMayAsk() {
        TestHerd herd = TestHerd.make();
        TestHerd reader = herd.withKey(TestHerd.key("read write", herd.code(), null));
        TestHerd calculator = herd.withKey(TestHerd.key("calculate", herd.code(), null));
        for (String address : ADDRESSES) {
            assertThat(post(reader, address).expecting(403).textAt("/code")).isEqualTo("scope-missing");
            // the key is judged before the body
            assertThat(Posts.calculate(reader, address, "{").expecting(403).textAt("/code"))
                    .isEqualTo("scope-missing");
            post(calculator, address).expecting(200);
            assertThat(post(herd.withKey("no such key"), address).expecting(401).textAt("/code"))
                    .isEqualTo("not-authenticated");
        }
        assertThat(calculator
                        .getAnimal("A1", "/lactations/1/curve")
                        .expecting(403)
                        .textAt("/code"))
                .isEqualTo("scope-missing");
    }

    @Test
    void nothingIsKept() {
        TestHerd herd = TestHerd.make();
        StoredRows before = StoredRows.in(database);
        for (String address : ADDRESSES) {
            post(herd, address).expecting(200);
        }
        assertThat(StoredRows.in(database)).isEqualTo(before);
    }

    @Test
    void onlyPlainJsonIsRead() {
        TestHerd herd = TestHerd.make();
        for (String address : ADDRESSES) {
            assertThat(herd.send("POST", "/v1/calculate/" + address, TestHerd.CSV, "a,b\n1,2\n")
                            .expecting(415)
                            .textAt("/code"))
                    .isEqualTo("unsupported-media-type");
            herd.send("GET", "/v1/calculate/" + address, null, null).expecting(405);
        }
    }

    @Test
    void anyKeyMayListTheMethods() {
        TestHerd herd = TestHerd.make();
        Answer methods = herd.withKey(TestHerd.key("calculate", herd.code(), null))
                .send("GET", "/v1/methods", null, null)
                .expecting(200);
        herd.withKey("no such key").send("GET", "/v1/methods", null, null).expecting(401);
        Map<String, JsonNode> byName = new TreeMap<>();
        for (JsonNode method : methods.at("/methods")) {
            assertThat(method.at("/source").asText()).isNotBlank();
            assertThat(method.at("/sourceKnown").asText())
                    .isIn("read", "transcribed", "from-memory", "ours", "common-practice");
            assertThat(method.at("/version").asText()).matches("[0-9]+");
            byName.put(method.at("/name").asText(), method);
        }
        assertThat(byName.get("wood-1967").at("/kind").asText()).isEqualTo("curve");
        assertThat(byName.get("wood-1967").at("/leastTests").intValue()).isEqualTo(4);
        // IDF Bulletin 520/2022, as documented in the FAO library: 4.0 % fat, 3.3 % protein, 4.8 % lactose
        JsonNode standard = byName.get("fpcm-2022").at("/standard");
        assertThat(standard.at("/fatPct").doubleValue()).isEqualTo(4.0);
        assertThat(standard.at("/proteinPct").doubleValue()).isEqualTo(3.3);
        assertThat(standard.at("/lactosePct").doubleValue()).isEqualTo(4.8);
        assertThat(byName.get("fpcm-2022").at("/factorAtStandard").doubleValue())
                .isCloseTo(1.0, org.assertj.core.api.Assertions.within(1e-12));
        assertThat(byName)
                .containsKeys("test-interval", "multiple-trait-procedure", "rolling-herd-average", "scs-usda");
    }

    @Test
    void theDescribedExamplesAreAcceptedAndNothingIsSaidToBeCreated() {
        TestHerd herd = TestHerd.make();
        Answer api = herd.send("GET", "/v1/openapi?format=json", null, null).expecting(200);
        for (String address : ADDRESSES) {
            JsonNode operation =
                    api.json().at("/paths").get("/v1/calculate/" + address).get("post");
            assertThat(operation.get("responses").has("201")).as(address).isFalse();
            String reference = operation
                    .at("/requestBody/content/application~1json/schema/$ref")
                    .asText();
            JsonNode schema = api.json().at(reference.substring(1));
            assertThat(schema.at("/examples")).as(address).isNotEmpty();
            for (JsonNode example : schema.at("/examples")) {
                Answer answer =
                        Posts.calculate(herd, address, example.toString()).expecting(200);
                assertThat(answer.textAt("/status")).isIn("ok", null);
            }
        }
    }
}
