package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What every operation of the description must have, whoever adds it. */
@Tag("contract")
class DescriptionIT {
    /** The document of the last release; a release puts a new copy there. */
    private static final Path RELEASED = Path.of("src", "test", "resources", "openapi-baseline", "pailbook-v1.json");

    private static List<ApiOperation> operations;

    @BeforeAll
    static void read() throws IOException {
        operations = ApiDocument.committed().operations();
    }

    @Test
    void everyOperationHasANameOfItsOwnASummaryAndSaysWhichKeyItNeeds() {
        assertThat(operations)
                .allSatisfy(operation -> {
                    assertThat(operation.id())
                            .as(operation.method() + " " + operation.path())
                            .matches("[a-z][a-zA-Z0-9]*");
                    assertThat(operation.node().path("summary").asText())
                            .as(operation.id())
                            .isNotBlank();
                    assertThat(operation.node().has("security"))
                            .as(operation.id() + " says its security")
                            .isTrue();
                })
                .extracting(ApiOperation::id)
                .doesNotHaveDuplicates();
    }

    @Test
    void everyParameterIsDescribed() {
        assertThat(operations)
                .allSatisfy(operation -> assertThat(operation.parameters())
                        .allSatisfy(parameter -> assertThat(
                                        parameter.path("description").asText())
                                .as("parameter %s of %s", parameter.path("name"), operation.id())
                                .isNotBlank()));
    }

    @Test
    void everyBodyAndEveryAnswerWithContentHasASchema() {
        assertThat(operations).allSatisfy(operation -> {
            assertThat(operation.bodyForms().values())
                    .as("body of " + operation.id())
                    .allMatch(form -> form.has("schema"));
            operation
                    .answers()
                    .keySet()
                    .forEach(status -> assertThat(operation.answerForms(status).values())
                            .as("answer " + status + " of " + operation.id())
                            .allMatch(form -> form.has("schema")));
        });
    }

    @Test
    void everyOperationHasAGoodAnswerAndItsRefusals() {
        assertThat(operations).allSatisfy(operation -> {
            assertThat(operation.answers().keySet())
                    .as(operation.id())
                    .anyMatch(status -> status.startsWith("2"))
                    .contains("400", "500");
            if (operation.path().contains("{")) {
                assertThat(operation.answers()).as(operation.id()).containsKey("404");
            }
            if (!operation.isOpen()) {
                assertThat(operation.answers()).as(operation.id()).containsKeys("401", "403");
            }
            if (!operation.bodyForms().isEmpty()) {
                assertThat(operation.answers()).as(operation.id()).containsKeys("413", "415", "422");
            }
        });
    }

    @Test
    void everyOperationHasAnExample() {
        assertThat(operations)
                .allSatisfy(operation -> assertThat(operation.examples())
                        .as(
                                "%s has no example with an answer that is not a refusal. Write its request into"
                                        + " src/main/resources/openapi-examples/%s.json, add a line to order.txt there, and let the"
                                        + " service write the answer: DEVELOPERS.md, recipe \"An operation\"",
                                operation.id(), operation.id())
                        .anyMatch(example ->
                                example.status() != null && example.status().startsWith("2")));
    }

    @Test
    void theDocumentNamesNoHostAndNoDayOfItsMaking() throws IOException {
        JsonNode root = ApiDocument.committed().root();
        assertThat(root.has("servers")).isFalse();
        assertThat(root.get("openapi").asText()).startsWith("3.1");
        assertThat(root.toString()).doesNotContain("localhost", "127.0.0.1");
    }

    @Test
    void nothingThatWasReleasedIsBroken() throws IOException {
        ApiDocument released = ApiDocument.of(Files.readString(RELEASED));
        assertThat(ApiChanges.breaking(released, ApiDocument.committed()))
                .as("within v1 only additions; what was released is in " + RELEASED)
                .isEmpty();
    }
}
