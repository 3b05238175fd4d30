package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Breaking changes from one schema to another.
 *
 * @param inRequest whether bodies of this schema come in; else they go out
 * @param breaking takes what is found
 * @param seen pairs of named schemas that were compared, since schemas may hold themselves
 */
record SchemaChanges(ApiDocument older, ApiDocument newer, boolean inRequest, List<String> breaking, Set<String> seen) {
    private static final List<String> LEAST = List.of("minimum", "exclusiveMinimum", "minLength", "minItems");
    private static final List<String> MOST = List.of("maximum", "exclusiveMaximum", "maxLength", "maxItems");

    void compare(String at, JsonNode oldSchema, JsonNode newSchema) {
        String pair =
                oldSchema.path("$ref").asText() + " " + newSchema.path("$ref").asText();
        if (oldSchema.has("$ref") && newSchema.has("$ref") && !seen.add(pair)) {
            return;
        }
        JsonNode old = older.resolved(oldSchema);
        JsonNode now = newer.resolved(newSchema);
        compareTypes(at, old, now);
        compareLimits(at, old, now);
        Map<String, JsonNode> oldMembers = members(older, old);
        Map<String, JsonNode> newMembers = members(newer, now);
        oldMembers.forEach((name, member) -> {
            if (newMembers.containsKey(name)) {
                compare(at + "/" + name, member, newMembers.get(name));
            } else {
                breaking.add(at + "/" + name + " is gone");
            }
        });
        Set<String> oldNeeded = needed(older, old);
        Set<String> newNeeded = needed(newer, now);
        for (String name : inRequest ? newNeeded : oldNeeded) {
            if (!(inRequest ? oldNeeded : newNeeded).contains(name)) {
                breaking.add(at + "/" + name + (inRequest ? " is needed now" : " may be missing now"));
            }
        }
        for (String inner : List.of("items", "additionalProperties")) {
            if (old.path(inner).isObject() && now.path(inner).isObject()) {
                compare(at + "/*", old.get(inner), now.get(inner));
            }
        }
    }

    private void compareTypes(String at, JsonNode old, JsonNode now) {
        Set<String> oldTypes = ApiChanges.words(old.path("type"));
        Set<String> newTypes = ApiChanges.words(now.path("type"));
        Set<String> from = inRequest ? oldTypes : newTypes;
        Set<String> into = inRequest ? newTypes : oldTypes;
        boolean fits = into.isEmpty()
                || (!from.isEmpty()
                        && from.stream()
                                .allMatch(type ->
                                        into.contains(type) || (type.equals("integer") && into.contains("number"))));
        if (!fits) {
            breaking.add(at + " was " + oldTypes + ", is " + newTypes);
        }
        String oldFormat = old.path("format").asText();
        String newFormat = now.path("format").asText();
        boolean isWider = inRequest && (newFormat.isEmpty() || (oldFormat + newFormat).equals("int32int64"));
        if (!oldFormat.equals(newFormat) && !isWider && (inRequest || !oldFormat.isEmpty())) {
            breaking.add(at + " was of the format " + oldFormat + ", is of " + newFormat);
        }
    }

    private void compareLimits(String at, JsonNode old, JsonNode now) {
        if (!inRequest) {
            // codes and longer texts may be added to answers
            return;
        }
        Set<String> codes = new HashSet<>(ApiChanges.words(old.path("enum")));
        if (now.has("enum")
                && (!old.has("enum") || !ApiChanges.words(now.get("enum")).containsAll(codes))) {
            breaking.add(at + " does not take all codes of " + codes + " any more");
        }
        for (String limit : LEAST) {
            if (now.has(limit)
                    && (!old.has(limit)
                            || now.get(limit).asDouble() > old.get(limit).asDouble())) {
                breaking.add(at + ": " + limit + " was " + old.get(limit) + ", is " + now.get(limit));
            }
        }
        for (String limit : MOST) {
            if (now.has(limit)
                    && (!old.has(limit)
                            || now.get(limit).asDouble() < old.get(limit).asDouble())) {
                breaking.add(at + ": " + limit + " was " + old.get(limit) + ", is " + now.get(limit));
            }
        }
        if (now.has("pattern") && !now.get("pattern").equals(old.get("pattern"))) {
            breaking.add(at + ": the pattern was " + old.get("pattern") + ", is " + now.get("pattern"));
        }
    }

    private static Map<String, JsonNode> members(ApiDocument document, JsonNode schema) {
        Map<String, JsonNode> members = new LinkedHashMap<>();
        for (JsonNode part : schema.path("allOf")) {
            members.putAll(members(document, document.resolved(part)));
        }
        schema.path("properties").fields().forEachRemaining(member -> members.put(member.getKey(), member.getValue()));
        return members;
    }

    private static Set<String> needed(ApiDocument document, JsonNode schema) {
        Set<String> needed = new HashSet<>(ApiChanges.words(schema.path("required")));
        for (JsonNode part : schema.path("allOf")) {
            needed.addAll(needed(document, document.resolved(part)));
        }
        return needed;
    }
}
