package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * An example of an operation, put together from the places of the document that have its name.
 *
 * @param in values of parameters, by where they stand (path, query, header) and name
 * @param mediaType of the body; null without one
 * @param body null without one
 * @param moving pointers of dates in the body that must lie ahead
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
        List<String> moving,
        String status,
        String answerType,
        JsonNode answer,
        List<String> shortened) {
    private static final int DAYS_AHEAD = 300;

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
        List<String> moving = List.of();
        for (Map.Entry<String, JsonNode> form : operation.bodyForms().entrySet()) {
            JsonNode shown = form.getValue().path("examples").path(name);
            if (shown.has("value")) {
                mediaType = form.getKey();
                body = shown.get("value");
                moving = words(shown.path("x-moving"));
            }
        }
        for (String status : operation.answers().keySet()) {
            for (Map.Entry<String, JsonNode> form :
                    operation.answerForms(status).entrySet()) {
                JsonNode shown = form.getValue().path("examples").path(name);
                if (shown.has("value")) {
                    return new ApiExample(
                            operation,
                            name,
                            in,
                            mediaType,
                            body,
                            moving,
                            status,
                            form.getKey(),
                            shown.get("value"),
                            words(shown.path("x-shortened")));
                }
            }
        }
        boolean isWithoutContent = operation.answers().containsKey("204");
        return new ApiExample(
                operation, name, in, mediaType, body, moving, isWithoutContent ? "204" : null, null, null, List.of());
    }

    /** The body with its moving dates ahead of today; each is told to {@code learn} as it is shown and as it is sent. */
    JsonNode bodyOfToday(BiConsumer<String, String> learn) {
        if (body == null || moving.isEmpty()) {
            return body;
        }
        String ahead = LocalDate.now(ZoneOffset.UTC).plusDays(DAYS_AHEAD).toString();
        JsonNode moved = body.deepCopy();
        for (String pointer : moving) {
            int end = pointer.lastIndexOf('/');
            learn.accept(moved.at(pointer).asText(), ahead);
            ((ObjectNode) moved.at(pointer.substring(0, end))).put(pointer.substring(end + 1), ahead);
        }
        return moved;
    }

    private static List<String> words(JsonNode array) {
        List<String> words = new ArrayList<>();
        array.forEach(word -> words.add(word.asText()));
        return words;
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
