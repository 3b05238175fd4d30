package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** One operation of the document. */
record ApiOperation(ApiDocument document, String method, String path, JsonNode node) {
    String id() {
        return node.path("operationId").asText();
    }

    List<JsonNode> parameters() {
        List<JsonNode> all = new ArrayList<>();
        node.path("parameters").forEach(parameter -> all.add(document.resolved(parameter)));
        return all;
    }

    /** Forms of the body by media type; empty where none is taken. */
    Map<String, JsonNode> bodyForms() {
        return forms(document.resolved(node.path("requestBody")));
    }

    /** Answers by status. */
    Map<String, JsonNode> answers() {
        Map<String, JsonNode> answers = new LinkedHashMap<>();
        node.path("responses")
                .fields()
                .forEachRemaining(answer -> answers.put(answer.getKey(), document.resolved(answer.getValue())));
        return answers;
    }

    /** Forms of the answer of that status by media type. */
    Map<String, JsonNode> answerForms(String status) {
        JsonNode answer = answers().get(status);
        return answer == null ? Map.of() : forms(answer);
    }

    /** Scope the key needs; null if any key, or none, will do. */
    String scope() {
        JsonNode scopes = node.path("security").path(0).path("apiKey");
        return scopes.isEmpty() ? null : scopes.get(0).asText();
    }

    boolean isOpen() {
        return node.has("security") && node.get("security").isEmpty();
    }

    List<ApiExample> examples() {
        Set<String> names = new LinkedHashSet<>();
        parameters()
                .forEach(parameter -> parameter.path("examples").fieldNames().forEachRemaining(names::add));
        bodyForms().values().forEach(form -> form.path("examples").fieldNames().forEachRemaining(names::add));
        answers()
                .keySet()
                .forEach(status -> answerForms(status)
                        .values()
                        .forEach(form -> form.path("examples").fieldNames().forEachRemaining(names::add)));
        return names.stream().map(name -> ApiExample.of(this, name)).toList();
    }

    private static Map<String, JsonNode> forms(JsonNode withContent) {
        Map<String, JsonNode> forms = new LinkedHashMap<>();
        withContent.path("content").fields().forEachRemaining(form -> forms.put(form.getKey(), form.getValue()));
        return forms;
    }

    /** Short, since a failed assertion names many of them. */
    @Override
    public String toString() {
        return id();
    }
}
