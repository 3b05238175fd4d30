package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;

/** Random bodies for an operation: its examples with something changed, and values made from its schema. */
final class RandomBodies {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final int DEEPEST = 6;
    private static final Pattern DAY = Pattern.compile("\\b20\\d\\d-\\d\\d-\\d\\d");
    private static final List<String> RAW_VALUES = List.of(
            "null",
            "true",
            "-1",
            "0",
            "1.5",
            "1e400",
            "-0.0",
            "1E-400",
            "NaN",
            "123456789012345678901234567890",
            "\"\"",
            "\" \"",
            "\"27,4\"",
            "\"2025-02-30\"",
            "\"2026-13-01\"",
            "\"2025-11-12\"",
            "\"2199-01-01\"",
            "\"\\u0000\"",
            "\"\\ud83d\"",
            "\"=cmd()\"",
            "\"<b>\"",
            "[]",
            "{}",
            "[[[[[[1]]]]]]",
            "{\"a\":{\"b\":null}}",
            "\"2025-09-28T02:30:00+13:00\"",
            "\"" + "z".repeat(5000) + "\"",
            "[".repeat(100) + "]".repeat(100),
            "{\"x\":1,\"x\":2}",
            "1e999999999",
            "\"\\x\"");

    private final ApiDocument document;
    private final Random random;

    RandomBodies(ApiDocument document, Random random) {
        this.document = document;
        this.random = random;
    }

    /** The body of the example as it is, or with other days in it; null without one. */
    byte[] right(ApiExample example, ShownAndReal ids) {
        JsonNode shown = example == null ? null : example.bodyOfToday(ids::learn);
        if (shown == null) {
            return null;
        }
        String text = ids.real(shown.isTextual() ? shown.asText() : shown.toString());
        String days = DAY.matcher(text)
                .replaceAll(day ->
                        LocalDate.of(2025, 9, 1).plusDays(random.nextInt(400)).toString());
        return (oneIn(2) ? text : days).getBytes(StandardCharsets.UTF_8);
    }

    byte[] next(ApiOperation operation, ApiExample example, ShownAndReal ids) {
        JsonNode shown = example == null ? null : example.bodyOfToday(ids::learn);
        String text;
        if (shown == null || (!shown.isTextual() && oneIn(4))) {
            JsonNode form = operation.bodyForms().values().iterator().next();
            text = ofSchema(form.path("schema"), 0).toString();
        } else if (shown.isTextual()) {
            text = ids.real(shown.asText());
        } else {
            text = ids.real((oneIn(2) ? changed(shown.deepCopy()) : shown).toString());
        }
        // a raw value may be no JSON, so it goes in after the body was written
        if (oneIn(3)) {
            text = withRawValue(text);
        }
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return oneIn(8) ? damaged(bytes) : bytes;
    }

    private JsonNode ofSchema(JsonNode named, int depth) {
        JsonNode schema = document.resolved(named);
        if (schema.has("anyOf")) {
            return ofSchema(
                    schema.get("anyOf").get(random.nextInt(schema.get("anyOf").size())), depth);
        }
        if (schema.has("enum") && !oneIn(6)) {
            return schema.get("enum").get(random.nextInt(schema.get("enum").size()));
        }
        List<String> types = new ArrayList<>(ApiChanges.words(schema.path("type")));
        String type = types.isEmpty() ? "object" : types.get(random.nextInt(types.size()));
        switch (type) {
            case "object":
                ObjectNode object = NODES.objectNode();
                if (depth < DEEPEST) {
                    List<JsonNode> parts = new ArrayList<>(List.of(schema));
                    schema.path("allOf").forEach(part -> parts.add(document.resolved(part)));
                    for (JsonNode part : parts) {
                        part.path("properties").fields().forEachRemaining(member -> {
                            boolean isNeeded =
                                    ApiChanges.words(part.path("required")).contains(member.getKey());
                            if (isNeeded ? !oneIn(20) : oneIn(2)) {
                                object.set(member.getKey(), ofSchema(member.getValue(), depth + 1));
                            }
                        });
                    }
                }
                return object;
            case "array":
                ArrayNode array = NODES.arrayNode();
                for (int i = random.nextInt(4); i > 0 && depth < DEEPEST; i--) {
                    array.add(ofSchema(schema.path("items"), depth + 1));
                }
                return array;
            case "integer":
                return NODES.numberNode(random.nextInt(40) - 2);
            case "number":
                return NODES.numberNode(Math.round(random.nextDouble() * 1200 - 20) / 10.0);
            case "boolean":
                return NODES.booleanNode(random.nextBoolean());
            case "null":
                return NODES.nullNode();
            default:
                return NODES.textNode(text(schema));
        }
    }

    private String text(JsonNode schema) {
        if (schema.path("format").asText().equals("date")) {
            return LocalDate.of(2025, 1, 1).plusDays(random.nextInt(900)).toString();
        }
        List<String> words = List.of("example.eartag", "FB-0311", "FB-0318", "HOL", "fernbrook", "sale", "all", "x");
        return words.get(random.nextInt(words.size()));
    }

    /** With one member gone, doubled under another name, or replaced by one of another kind. */
    private JsonNode changed(JsonNode body) {
        List<ObjectNode> objects = new ArrayList<>();
        collect(body, objects);
        if (objects.isEmpty()) {
            return body;
        }
        ObjectNode one = objects.get(random.nextInt(objects.size()));
        List<String> names = new ArrayList<>();
        one.fieldNames().forEachRemaining(names::add);
        if (names.isEmpty()) {
            return body;
        }
        String name = names.get(random.nextInt(names.size()));
        switch (random.nextInt(5)) {
            case 0 -> one.remove(name);
            case 1 -> one.set(name + "x", one.get(name));
            case 2 -> one.put(name, random.nextInt(2000) / 10.0 - 5);
            case 3 -> one.put(name, text(NODES.objectNode()));
            default -> one.putNull(name);
        }
        return body;
    }

    private static void collect(JsonNode node, List<ObjectNode> objects) {
        if (node instanceof ObjectNode object) {
            objects.add(object);
        }
        node.forEach(inner -> collect(inner, objects));
    }

    /** The value after one colon or comma replaced by one that may not even be JSON. */
    private String withRawValue(String text) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < text.length() - 1; i++) {
            if (text.charAt(i) == ':' || text.charAt(i) == ',') {
                places.add(i + 1);
            }
        }
        if (places.isEmpty()) {
            return RAW_VALUES.get(random.nextInt(RAW_VALUES.size()));
        }
        int from = places.get(random.nextInt(places.size()));
        int to = from;
        while (to < text.length() && ",}]\n".indexOf(text.charAt(to)) < 0) {
            to++;
        }
        return text.substring(0, from) + RAW_VALUES.get(random.nextInt(RAW_VALUES.size())) + text.substring(to);
    }

    private byte[] damaged(byte[] bytes) {
        switch (random.nextInt(5)) {
            case 0:
                return new byte[0];
            case 1:
                return Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
            case 2:
                byte[] longer = Arrays.copyOf(bytes, bytes.length + 3);
                random.nextBytes(longer);
                return longer;
            case 3:
                byte[] marked = new byte[bytes.length + 3];
                marked[0] = (byte) 0xEF;
                marked[1] = (byte) 0xBB;
                marked[2] = (byte) 0xBF;
                System.arraycopy(bytes, 0, marked, 3, bytes.length);
                return marked;
            default:
                byte[] flipped = bytes.clone();
                for (int i = 0; i < 3 && flipped.length > 0; i++) {
                    flipped[random.nextInt(flipped.length)] = (byte) random.nextInt(256);
                }
                return flipped;
        }
    }

    private boolean oneIn(int times) {
        return random.nextInt(times) == 0;
    }
}
