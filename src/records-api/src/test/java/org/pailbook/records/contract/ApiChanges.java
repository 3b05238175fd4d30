package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a newer description of the API breaks for somebody who keeps to an older one: addresses, members, parameters, forms gone or renamed,
 * types narrowed in requests or widened in answers, something needed that was not. Additions break nothing. Own and small: it holds the rules
 * of our change policy, open codes in answers among them, and no others. General tools were not tried.
 */
final class ApiChanges {
    private final ApiDocument older;
    private final ApiDocument newer;
    private final List<String> breaking = new ArrayList<>();

    private ApiChanges(ApiDocument older, ApiDocument newer) {
        this.older = older;
        this.newer = newer;
    }

    /** Each breaking change with its place; empty if there is none. */
    static List<String> breaking(ApiDocument older, ApiDocument newer) {
        ApiChanges changes = new ApiChanges(older, newer);
        changes.compare();
        return changes.breaking;
    }

    private void compare() {
        for (ApiOperation old : older.operations()) {
            String at = old.method() + " " + old.path();
            newer.operations().stream()
                    .filter(one ->
                            one.method().equals(old.method()) && one.path().equals(old.path()))
                    .findFirst()
                    .ifPresentOrElse(now -> compare(at, old, now), () -> breaking.add(at + " is gone"));
        }
    }

    private void compare(String at, ApiOperation old, ApiOperation now) {
        if (!old.id().equals(now.id())) {
            breaking.add(at + " was called " + old.id() + ", is called " + now.id());
        }
        if (now.scope() != null && old.scope() != null && !now.scope().equals(old.scope())) {
            breaking.add(at + " needed the scope " + old.scope() + ", needs " + now.scope());
        }
        compareParameters(at, old, now);
        boolean neededBody =
                older.resolved(old.node().path("requestBody")).path("required").asBoolean();
        boolean needsBody =
                newer.resolved(now.node().path("requestBody")).path("required").asBoolean();
        if (needsBody && !neededBody) {
            breaking.add(at + " needs a body now");
        }
        compareForms(at + " body", old.bodyForms(), now.bodyForms(), true);
        for (String status : old.answers().keySet()) {
            if (!now.answers().containsKey(status)) {
                // refusing for fewer reasons breaks nothing
                if (status.startsWith("2")) {
                    breaking.add(at + " does not answer " + status + " any more");
                }
            } else {
                compareForms(at + " answer " + status, old.answerForms(status), now.answerForms(status), false);
            }
        }
    }

    private void compareParameters(String at, ApiOperation old, ApiOperation now) {
        for (JsonNode parameter : old.parameters()) {
            String name = parameter.get("in").asText() + " parameter "
                    + parameter.get("name").asText();
            JsonNode same = find(now, parameter);
            if (same == null) {
                breaking.add(at + ": " + name + " is gone");
            } else {
                if (same.path("required").asBoolean()
                        && !parameter.path("required").asBoolean()) {
                    breaking.add(at + ": " + name + " is needed now");
                }
                compare(at + " " + name, parameter.path("schema"), same.path("schema"), true);
            }
        }
        for (JsonNode parameter : now.parameters()) {
            if (parameter.path("required").asBoolean() && find(old, parameter) == null) {
                breaking.add(at + ": " + parameter.get("name").asText() + " is new and needed");
            }
        }
    }

    private static JsonNode find(ApiOperation in, JsonNode parameter) {
        return in.parameters().stream()
                .filter(one -> one.get("in").equals(parameter.get("in"))
                        && one.get("name").equals(parameter.get("name")))
                .findFirst()
                .orElse(null);
    }

    private void compareForms(String at, Map<String, JsonNode> old, Map<String, JsonNode> now, boolean inRequest) {
        old.forEach((mediaType, form) -> {
            if (now.containsKey(mediaType)) {
                compare(at, form.path("schema"), now.get(mediaType).path("schema"), inRequest);
            } else {
                breaking.add(at + " is not of the type " + mediaType + " any more");
            }
        });
    }

    private void compare(String at, JsonNode old, JsonNode now, boolean inRequest) {
        new SchemaChanges(older, newer, inRequest, breaking, new HashSet<>()).compare(at, old, now);
    }

    /** The words of an array, as a set. */
    static Set<String> words(JsonNode array) {
        Set<String> words = new HashSet<>();
        if (array.isArray()) {
            array.forEach(word -> words.add(word.asText()));
        } else if (!array.isMissingNode()) {
            words.add(array.asText());
        }
        return words;
    }
}
