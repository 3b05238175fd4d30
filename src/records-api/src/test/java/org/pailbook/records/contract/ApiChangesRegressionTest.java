package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Made-up changes of a released description: those that break a client are found, additions are not. */
class ApiChangesRegressionTest {
    private static final String TEST_DAYS = "/paths/~1v1~1herds~1{herd}~1test-days";

    static Stream<Named<Consumer<JsonNode>>> breakingChanges() {
        return Stream.of(
                change("an address is gone", root -> at(root, "/paths").remove("/v1/herds/{herd}/test-days")),
                change("a method is gone", root -> at(root, TEST_DAYS).remove("post")),
                change(
                        "an operation is renamed",
                        root -> at(root, TEST_DAYS + "/get").put("operationId", "getTests")),
                change(
                        "a parameter is gone",
                        root -> array(root, TEST_DAYS + "/get/parameters").remove(2)),
                change(
                        "a parameter is needed",
                        root -> ((ObjectNode) array(root, TEST_DAYS + "/get/parameters")
                                        .get(2))
                                .put("required", true)),
                change(
                        "a new parameter is needed",
                        root -> array(root, TEST_DAYS + "/get/parameters")
                                .addObject()
                                .put("name", "tank")
                                .put("in", "query")
                                .put("required", true)),
                change(
                        "a form of bodies is gone",
                        root -> at(root, TEST_DAYS + "~1bulk/post/requestBody/content")
                                .remove("text/csv")),
                change(
                        "a good answer is gone",
                        root -> at(root, TEST_DAYS + "/post/responses").remove("201")),
                change(
                        "a member is gone",
                        root -> at(root, "/components/schemas/TestDay/properties")
                                .remove("fatPct")),
                change("a member is renamed", root -> {
                    ObjectNode members = at(root, "/components/schemas/TestDay/properties");
                    members.set("fatPercent", members.remove("fatPct"));
                }),
                change(
                        "a type is narrowed",
                        root -> at(root, "/components/schemas/TestDay/properties/milkKg")
                                .put("type", "integer")),
                change(
                        "a type is another one",
                        root -> at(root, "/components/schemas/TestDay/properties/milkKg")
                                .put("type", "string")),
                change(
                        "an answer may be null",
                        root -> at(root, "/components/schemas/Finding/properties/code")
                                .putArray("type")
                                .add("string")
                                .add("null")),
                change(
                        "a member is needed",
                        root -> array(root, "/components/schemas/TestDay/required")
                                .add("milkKg")),
                change(
                        "an answered member may be missing",
                        root -> array(root, "/components/schemas/Finding/required")
                                .remove(1)),
                change(
                        "a limit is tighter",
                        root -> at(root, "/components/schemas/Calving/properties/parity")
                                .put("maximum", 9)),
                change(
                        "a code is not taken any more",
                        root -> array(root, "/components/schemas/Departure/properties/kind/enum")
                                .remove(0)));
    }

    static Stream<Named<Consumer<JsonNode>>> additions() {
        return Stream.of(
                change("nothing", root -> {}),
                change(
                        "a new address",
                        root -> at(root, "/paths")
                                .set("/v1/new", at(root, TEST_DAYS).deepCopy())),
                change(
                        "a new member",
                        root -> at(root, "/components/schemas/TestDay/properties")
                                .putObject("ureaMgPerDl")
                                .put("type", "number")),
                change(
                        "a new parameter",
                        root -> array(root, TEST_DAYS + "/get/parameters")
                                .addObject()
                                .put("name", "tank")
                                .put("in", "query")),
                change(
                        "a wider limit",
                        root -> at(root, "/components/schemas/Calving/properties/parity")
                                .put("maximum", 99)),
                change(
                        "a new code",
                        root -> array(root, "/components/schemas/Departure/properties/kind/enum")
                                .add("show")),
                change("other words", root -> at(root, TEST_DAYS + "/get").put("summary", "Test days")));
    }

    @ParameterizedTest
    @MethodSource("breakingChanges")
    void whatBreaksAClientIsFound(Consumer<JsonNode> change) throws IOException {
        assertThat(found(change)).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("additions")
    void whatOnlyAddsIsLetThrough(Consumer<JsonNode> change) throws IOException {
        assertThat(found(change)).isEmpty();
    }

    @Test
    void thePlaceOfABreakingChangeIsTold() throws IOException {
        assertThat(found(root ->
                        at(root, "/components/schemas/TestDay/properties").remove("fatPct")))
                .contains("POST /v1/herds/{herd}/test-days body/fatPct is gone");
    }

    private static List<String> found(Consumer<JsonNode> change) throws IOException {
        ApiDocument older = ApiDocument.committed();
        ApiDocument newer = new ApiDocument(older.root().deepCopy());
        change.accept(newer.root());
        return ApiChanges.breaking(older, newer);
    }

    private static Named<Consumer<JsonNode>> change(String name, Consumer<JsonNode> change) {
        return Named.of(name, change);
    }

    private static ObjectNode at(JsonNode root, String pointer) {
        return (ObjectNode) root.at(pointer);
    }

    private static ArrayNode array(JsonNode root, String pointer) {
        return (ArrayNode) root.at(pointer);
    }
}
