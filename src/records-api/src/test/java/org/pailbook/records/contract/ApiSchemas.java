package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Checks bodies against the schemas of a document (OpenAPI 3.1 takes JSON Schema 2020-12 as it is). */
final class ApiSchemas {
    private final SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private final JsonNode named;
    private final Map<JsonNode, Schema> read = new HashMap<>();

    ApiSchemas(ApiDocument document) {
        named = document.root().get("components").get("schemas").deepCopy();
        // a member that is answered and not described is a fault of the description, so here nothing may go unsaid
        Set<String> parts = new HashSet<>();
        named.findValues("allOf")
                .forEach(all ->
                        all.forEach(part -> parts.add(part.path("$ref").asText().replaceFirst(".*/", ""))));
        named.fields().forEachRemaining(schema -> {
            if (!parts.contains(schema.getKey())) {
                close(schema.getValue());
            }
        });
    }

    private static void close(JsonNode schema) {
        if (schema instanceof ObjectNode object && object.has("properties") && !object.has("additionalProperties")) {
            object.put("unevaluatedProperties", false);
        }
    }

    /** What is wrong with the body; empty if it fits. */
    List<String> faults(JsonNode schema, JsonNode body) {
        return read.computeIfAbsent(schema, this::readable).validate(body.toString(), InputFormat.JSON).stream()
                .map(error -> error.getInstanceLocation() + " " + error.getMessage())
                .toList();
    }

    private Schema readable(JsonNode schema) {
        ObjectNode whole = schema.deepCopy();
        whole.set("$defs", named);
        return registry.getSchema(whole.toString().replace("#/components/schemas/", "#/$defs/"), InputFormat.JSON);
    }
}
