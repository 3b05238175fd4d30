package org.pailbook.records.contract;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes the real answers into the files of the examples, with ids and times that are the same in every run. */
final class ExampleRecorder {
    private static final Pattern OTHER_ANSWER = Pattern.compile("\\{\\{([^:{}]+):([^{}#]+)(?:#(\\d+))?}}");
    private static final int SHOWN_WHEN_SHORTENED = 2;

    private final ApiCaller caller;
    private final ShownAndReal ids = new ShownAndReal();
    private final Map<String, JsonNode> realAnswers = new HashMap<>();

    ExampleRecorder(ApiCaller caller) {
        this.caller = caller;
    }

    void record(ApiDocument document, List<String> stems) throws IOException {
        for (String stem : stems) {
            ApiOperation operation = document.operationsById().get(stem.replaceFirst("\\..*", ""));
            if (operation == null) {
                throw new IllegalStateException("the description has no operation for the example " + stem);
            }
            Path file = ExampleOrder.FOLDER.resolve(stem + ".json");
            ObjectNode content = (ObjectNode) ApiDocument.JSON.readTree(file.toFile());
            ApiCaller.Heard heard = caller.send(request(operation, stem, content), ids, this::withRealIds);
            if (heard.status() != content.path("status").asInt(200)) {
                System.out.println("example " + stem + " is answered with " + heard.status() + ": " + heard.text());
            }
            content.put("status", Integer.toString(heard.status()));
            if (!heard.text().isEmpty()) {
                keepAnswer(stem, content, heard);
            }
            DefaultPrettyPrinter layout = new DefaultPrettyPrinter()
                    .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                    .withArrayIndenter(new DefaultIndenter("  ", "\n"));
            Files.writeString(file, ApiDocument.JSON.writer(layout).writeValueAsString(content) + "\n");
        }
    }

    private void keepAnswer(String stem, ObjectNode content, ApiCaller.Heard heard) {
        boolean isJson = heard.mediaType().endsWith("json");
        if (!isJson) {
            content.put("responseType", heard.mediaType());
        }
        JsonNode real = isJson ? heard.json() : content.textNode(heard.text());
        realAnswers.put(stem, real);
        JsonNode shown = ids.invented(real, stem);
        content.path("shortened").forEach(pointer -> shorten(shown.at(pointer.asText())));
        content.set("response", shown);
    }

    /** The request as it stands in the file: the document has ids of the last recording in it. */
    private static ApiExample request(ApiOperation operation, String stem, ObjectNode content) {
        JsonNode request = content.path("request");
        Map<String, Map<String, String>> in = new HashMap<>();
        Map.of("path", "path", "query", "query", "headers", "header").forEach((inFile, place) -> {
            Map<String, String> values = new LinkedHashMap<>();
            request.path(inFile)
                    .fields()
                    .forEachRemaining(
                            value -> values.put(value.getKey(), value.getValue().asText()));
            in.put(place, values);
        });
        List<String> moving = new ArrayList<>();
        content.path("moving").forEach(pointer -> moving.add(pointer.asText()));
        return new ApiExample(
                operation,
                stem,
                in,
                request.path("contentType").asText("application/json"),
                request.get("body"),
                moving,
                null,
                null,
                null,
                List.of());
    }

    private String withRealIds(String text) {
        return OTHER_ANSWER.matcher(text).replaceAll(found -> {
            JsonNode answer = realAnswers.get(found.group(1));
            if (answer == null) {
                throw new IllegalStateException("no answer of " + found.group(1) + " was recorded before " + text);
            }
            String whole = answer.at(found.group(2)).asText();
            return Matcher.quoteReplacement(
                    found.group(3) == null ? whole : whole.split("/")[Integer.parseInt(found.group(3))]);
        });
    }

    private static void shorten(JsonNode array) {
        if (array instanceof ArrayNode entries) {
            while (entries.size() > SHOWN_WHEN_SHORTENED) {
                entries.remove(entries.size() - 1);
            }
        }
    }
}
