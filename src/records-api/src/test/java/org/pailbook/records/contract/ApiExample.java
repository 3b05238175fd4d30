package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An example of an operation, put together from the places of the document that have its name.
 *
 * @param in values of parameters, by where they stand (path, query, header) and name
 * @param mediaType of the body; null without one
 * @param body null without one
 * @param status of the answer; null if neither an answer is shown nor one without content is described
 * @param answerType media type; null without an answer
 * @param answer null without one
 * @param shortened pointers of arrays of which the answer shows some entries only
 */
record ApiExample(
        ApiOperation operation,
        String name,
        Map<String, Map<String, String>> in,
        String mediaType,
        JsonNode body,
        String status,
        String answerType,
        JsonNode answer,
        List<String> shortened) {

    static ApiExample of(ApiOperation operation, String name) {
        Map<String, Map<String, String>> in = new LinkedHashMap<>();
        for (JsonNode parameter : operation.parameters()) {
            JsonNode value = parameter.path("examples").path(name).path("value");
            if (!value.isMissingNode()) {
                in.computeIfAbsent(parameter.get("in").asText(), place -> new LinkedHashMap<>())
                        .put(parameter.get("name").asText(), value.asText());
            }
        }
        String mediaType = null;
        JsonNode body = null;
        for (Map.Entry<String, JsonNode> form : operation.bodyForms().entrySet()) {
            JsonNode value = form.getValue().path("examples").path(name).path("value");
            if (!value.isMissingNode()) {
                mediaType = form.getKey();
                body = value;
            }
        }
        for (String status : operation.answers().keySet()) {
            for (Map.Entry<String, JsonNode> form :
                    operation.answerForms(status).entrySet()) {
                JsonNode shown = form.getValue().path("examples").path(name);
                if (shown.has("value")) {
                    List<String> shortened = new ArrayList<>();
                    shown.path("x-shortened").forEach(pointer -> shortened.add(pointer.asText()));
                    return new ApiExample(
                            operation, name, in, mediaType, body, status, form.getKey(), shown.get("value"), shortened);
                }
            }
        }
        boolean isWithoutContent = operation.answers().containsKey("204");
        return new ApiExample(
                operation, name, in, mediaType, body, isWithoutContent ? "204" : null, null, null, List.of());
    }

    /** Name of its file, without the ending. */
    String stem() {
        return name.equals("usual") ? operation.id() : operation.id() + "." + name;
    }

    @Override
    public String toString() {
        return stem();
    }
}
