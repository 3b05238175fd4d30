package org.pailbook.records.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Sends every example of the description to a fresh service, one after the other. With {@code -Dpailbook.examples=record} it writes what the
 * service answers into the files of the examples instead.
 */
@Tag("contract")
class ExamplesIT {
    @ParameterizedTest
    @EnumSource
    void everyExampleIsAnsweredAsShown(FreshService.Database database, @TempDir Path data) throws IOException {
        boolean records = "record".equals(System.getProperty("pailbook.examples"));
        ApiDocument document = ApiDocument.committed();
        ApiSchemas schemas = new ApiSchemas(document);
        List<ApiExample> examples = ExampleOrder.of(document);
        assumeFalse(records && database != FreshService.Database.SQLITE, "one recording is enough");
        assertThat(records || !examples.isEmpty()).isTrue();
        try (FreshService service = FreshService.start(database, data)) {
            ApiCaller caller = service.caller();
            if (records) {
                new ExampleRecorder(caller).record(document, ExampleOrder.stems());
                return;
            }
            ShownAndReal ids = new ShownAndReal();
            List<String> faults = new ArrayList<>();
            for (ApiExample example : examples) {
                faultsOf(example, caller, ids, schemas)
                        .forEach(fault -> faults.add("example " + example.stem() + ": " + fault));
            }
            assertThat(faults)
                    .as("if the service is right, record the examples anew: DEVELOPERS.md, recipe \"An operation\"")
                    .isEmpty();
        }
    }

    private static List<String> faultsOf(ApiExample example, ApiCaller caller, ShownAndReal ids, ApiSchemas schemas) {
        List<String> faults = new ArrayList<>();
        if (example.status() == null) {
            return List.of("shows no answer");
        }
        boolean isGood = example.status().startsWith("2");
        JsonNode bodySchema = schema(example.operation().bodyForms(), example.mediaType());
        if (isGood && example.body() != null) {
            schemas.faults(bodySchema, example.body()).forEach(fault -> faults.add("request: " + fault));
        }
        ApiCaller.Heard heard = caller.send(example, ids);
        if (heard.status() != Integer.parseInt(example.status())) {
            faults.add("shows status " + example.status() + ", is " + heard.status() + ": " + heard.text());
            return faults;
        }
        if (example.answer() == null) {
            return faults;
        }
        if (!heard.mediaType().equals(example.answerType())) {
            faults.add("shows " + example.answerType() + ", is " + heard.mediaType());
            return faults;
        }
        JsonNode real = heard.mediaType().endsWith("json")
                ? heard.json()
                : ApiDocument.JSON.getNodeFactory().textNode(heard.text());
        faults.addAll(ids.differences(example.answer(), real, example.shortened()));
        schemas.faults(schema(example.operation().answerForms(example.status()), example.answerType()), real)
                .forEach(fault -> faults.add("answer does not fit its schema: " + fault));
        return faults;
    }

    private static JsonNode schema(Map<String, JsonNode> forms, String mediaType) {
        return forms.containsKey(mediaType) ? forms.get(mediaType).get("schema") : null;
    }
}
