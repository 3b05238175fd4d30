package org.pailbook.records.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One example: a request as somebody would send it, and what the service answered. The file is named
 * {@code <operationId>[.<name>].json}; {@code order.txt} lists the files in the order in which they build on each other.
 *
 * <p>In a request, <code>{{upsertTestDay:/id}}</code> stands for that place of the answer of another example, and
 * <code>{{createFeed:/address#2}}</code> for the part of it after the second slash.
 *
 * @param stem name of the file without its ending
 */
record ExampleFile(String stem, JsonNode content, Map<String, JsonNode> allByStem) {
    private static final String FOLDER = "openapi-examples/";
    private static final Pattern OTHER_ANSWER = Pattern.compile("\\{\\{([^:{}]+):([^{}#]+)(?:#(\\d+))?}}");
    private static final ObjectMapper JSON = new ObjectMapper();
    /** Of the only or first example of an operation. */
    private static final String USUAL = "usual";

    private static final String JSON_TYPE = "application/json";

    /** All examples, in their order. */
    static List<ExampleFile> all() {
        List<String> stems = text("order.txt")
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .toList();
        Map<String, JsonNode> contents = new LinkedHashMap<>();
        for (String stem : stems) {
            contents.put(stem, json(stem));
        }
        return stems.stream()
                .map(stem -> new ExampleFile(stem, contents.get(stem), contents))
                .toList();
    }

    String operationId() {
        return stem.contains(".") ? stem.substring(0, stem.indexOf('.')) : stem;
    }

    String name() {
        return stem.contains(".") ? stem.substring(stem.indexOf('.') + 1) : USUAL;
    }

    /** In one line what is special about it; null where nothing is. */
    String summary() {
        return content.path("summary").asText(null);
    }

    Map<String, String> path() {
        return texts("path");
    }

    Map<String, String> query() {
        return texts("query");
    }

    Map<String, String> headers() {
        return texts("headers");
    }

    String contentType() {
        return content.path("request").path("contentType").asText(JSON_TYPE);
    }

    /** Null where none is sent. */
    Object body() {
        return value(content.path("request").get("body"));
    }

    String status() {
        return content.path("status").asText("200");
    }

    String responseType() {
        return content.path("responseType").asText(status().compareTo("400") < 0 ? JSON_TYPE : ApiRefusals.MEDIA_TYPE);
    }

    /** Null where there is none, as after a withdrawal, or where it was not recorded yet. */
    Object response() {
        return value(content.get("response"));
    }

    /** Pointers of dates in the body that must lie ahead of the day on which it is sent. */
    List<String> moving() {
        return words("moving");
    }

    /** Pointers of the arrays in the answer of which only some entries are shown. */
    List<String> shortened() {
        return words("shortened");
    }

    private List<String> words(String member) {
        List<String> words = new ArrayList<>();
        content.path(member).forEach(word -> words.add(word.asText()));
        return words;
    }

    IllegalStateException wrong(String why) {
        return new IllegalStateException("example " + FOLDER + stem + ".json: " + why);
    }

    private Map<String, String> texts(String place) {
        Map<String, String> values = new LinkedHashMap<>();
        content.path("request")
                .path(place)
                .fields()
                .forEachRemaining(entry ->
                        values.put(entry.getKey(), filled(entry.getValue().asText())));
        return values;
    }

    private Object value(JsonNode node) {
        if (node == null || node.isNull()) {
            return null;
        }
        try {
            return JSON.readValue(filled(node.toString()), Object.class);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private String filled(String text) {
        return OTHER_ANSWER.matcher(text).replaceAll(found -> {
            JsonNode other = allByStem.get(found.group(1));
            if (other == null) {
                throw wrong("there is no example " + found.group(1));
            }
            // not recorded yet: the recorder fills it in
            String answer = other.path("response").at(found.group(2)).asText(found.group());
            return Matcher.quoteReplacement(
                    found.group(3) == null || answer.equals(found.group())
                            ? answer
                            : answer.split("/")[Integer.parseInt(found.group(3))]);
        });
    }

    private static JsonNode json(String stem) {
        try {
            return JSON.readTree(text(stem + ".json"));
        } catch (IOException broken) {
            throw new UncheckedIOException("example " + FOLDER + stem + ".json is no JSON", broken);
        }
    }

    private static String text(String name) {
        try (InputStream file = ExampleFile.class.getClassLoader().getResourceAsStream(FOLDER + name)) {
            if (file == null) {
                throw new IllegalStateException("there is no " + FOLDER + name);
            }
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
