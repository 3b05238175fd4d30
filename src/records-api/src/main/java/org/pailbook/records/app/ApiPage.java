package org.pailbook.records.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Iterator;
import java.util.Map;
import java.util.TreeMap;

/** Writes a description of the API as one HTML page: operations by subject, their parameters, bodies, answers and examples. */
final class ApiPage {
    private static final String STYLE = """
            body{font:16px/1.5 system-ui,sans-serif;max-width:60rem;margin:0 auto;padding:1rem;color:#1d2a1f;background:#fff}
            h2{margin-top:2.5rem;border-bottom:2px solid #2f5d3a}h3{margin:1.5rem 0 .25rem}
            code,pre{font:14px/1.45 ui-monospace,monospace}table code,td a{overflow-wrap:anywhere}pre{background:#f3f6f2;padding:.75rem;overflow:auto;max-height:30rem}
            table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.25rem .5rem;border-top:1px solid #c9d3c9}
            a{color:#1b5e34}summary{cursor:pointer;padding:.25rem 0}.method{font-weight:700}nav li{margin:.2rem 0}
            h3,.path{overflow-wrap:anywhere}nav ul{columns:11rem;padding-left:1.2rem}
            @media(max-width:40rem){th:first-child,td:first-child{width:34%}}
            @media print{nav{display:none}pre{max-height:none}}
            """;

    /** The page may use its own style and nothing else, from here or elsewhere. */
    static final String POLICY = "default-src 'none'; style-src 'sha256-" + hash(STYLE) + "'; frame-ancestors 'none'";

    private static final String[] METHODS = {"get", "post", "put", "patch", "delete"};

    private final JsonNode document;
    private final StringBuilder html = new StringBuilder();

    ApiPage(JsonNode document) {
        this.document = document;
    }

    String html() {
        html.append("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\">")
                .append(
                        "<meta name=\"viewport\" content=\"width=device-width\"><title>Pailbook: the API</title><style>")
                .append(STYLE)
                .append("</style></head><body><h1>Pailbook: the API</h1><p>");
        text(document.at("/info/description").asText());
        html.append(
                        "</p><p>Send a key as <code>X-API-Key</code>, as bearer token, or as the password of Basic sign-in. ")
                .append("The same for programs: <a href=\"/v1/openapi.json\">OpenAPI</a>. ")
                .append("What refusals mean: <a href=\"/problems\">problem codes</a>.</p>");
        Map<String, Map<String, JsonNode>> subjects = subjects();
        html.append("<nav aria-label=\"Subjects\"><ul>");
        subjects.keySet().forEach(subject -> link("#" + anchor(subject), subject));
        link("#shapes", "Shapes of bodies");
        html.append("</ul></nav><main>");
        subjects.forEach((subject, operations) -> {
            html.append("<h2 id=\"").append(anchor(subject)).append("\">");
            text(subject);
            html.append("</h2>");
            operations.forEach(this::operation);
        });
        html.append("<h2 id=\"shapes\">Shapes of bodies</h2>");
        document.at("/components/schemas").fields().forEachRemaining(schema -> {
            html.append("<h3 id=\"shape-").append(anchor(schema.getKey())).append("\">");
            text(schema.getKey());
            html.append("</h3>");
            paragraph(schema.getValue().path("description").asText());
            members(schema.getValue());
        });
        return html.append("</main></body></html>").toString();
    }

    /** Operations by subject; each under its method and path. */
    private Map<String, Map<String, JsonNode>> subjects() {
        Map<String, Map<String, JsonNode>> subjects = new TreeMap<>();
        document.get("paths").fields().forEachRemaining(path -> {
            for (String method : METHODS) {
                JsonNode operation = path.getValue().get(method);
                if (operation != null) {
                    subjects.computeIfAbsent(operation.at("/tags/0").asText("Other"), subject -> new TreeMap<>())
                            .put(path.getKey() + " " + method.toUpperCase(java.util.Locale.ROOT), operation);
                }
            }
        });
        return subjects;
    }

    private void operation(String pathAndMethod, JsonNode operation) {
        String[] parts = pathAndMethod.split(" ");
        html.append("<h3 id=\"")
                .append(anchor(operation.path("operationId").asText()))
                .append("\" class=\"path\"><code><span class=\"method\">")
                .append(parts[1])
                .append("</span> ");
        text(parts[0]);
        html.append("</code></h3>");
        paragraph(operation.path("summary").asText());
        String scope = operation.at("/security/0/apiKey/0").asText();
        if (!scope.isEmpty()) {
            paragraph("Needs the scope " + scope + ".");
        }
        if (operation.has("parameters")) {
            html.append("<table><tr><th>Parameter</th><th>Where</th><th>Meaning</th></tr>");
            operation.get("parameters").forEach(parameter -> {
                row(parameter.path("name").asText(), parameter.path("in").asText());
                text(parameter.path("description").asText());
                html.append("</td></tr>");
            });
            html.append("</table>");
        }
        forms("Body", resolved(operation.path("requestBody")));
        operation.path("responses").fields().forEachRemaining(answer -> {
            JsonNode described = resolved(answer.getValue());
            forms(answer.getKey() + " " + described.path("description").asText(), described);
        });
    }

    private void forms(String title, JsonNode withContent) {
        Iterator<Map.Entry<String, JsonNode>> forms =
                withContent.path("content").fields();
        if (!forms.hasNext()) {
            paragraph(withContent.isMissingNode() ? "" : title);
        }
        forms.forEachRemaining(form -> {
            html.append("<details><summary>");
            text(title + " (" + form.getKey() + ")");
            html.append("</summary>");
            shape(form.getValue().path("schema"));
            form.getValue().path("examples").fields().forEachRemaining(example -> {
                JsonNode value = example.getValue().path("value");
                paragraph(example.getValue().path("summary").asText("Example"));
                html.append("<pre>");
                text(value.isTextual() ? value.asText() : value.toPrettyString());
                html.append("</pre>");
            });
            html.append("</details>");
        });
    }

    private void members(JsonNode schema) {
        schema.path("allOf").forEach(this::shape);
        if (schema.has("properties")) {
            html.append("<table><tr><th>Member</th><th>Type</th><th>Meaning</th></tr>");
            schema.get("properties").fields().forEachRemaining(member -> {
                row(member.getKey(), type(member.getValue()));
                JsonNode meant = member.getValue().has("anyOf")
                        ? member.getValue().get("anyOf").get(0)
                        : member.getValue();
                text(meant.path("description").asText());
                shape(meant.has("items") ? meant.get("items") : meant);
                html.append("</td></tr>");
            });
            html.append("</table>");
        } else if (schema.has("enum")) {
            paragraph("One of "
                    + schema.get("enum").toString().replaceAll("[\\[\\]\"]", "").replace(",", ", ") + ".");
        }
    }

    private static String type(JsonNode schema) {
        if (schema.has("anyOf")) {
            return type(schema.get("anyOf").get(0)) + " or null";
        }
        String type = schema.path("type")
                .asText(schema.has("$ref") ? "" : schema.path("type").toString());
        return schema.has("items") ? "array" : type;
    }

    private void shape(JsonNode schema) {
        String ref = schema.path("$ref").asText();
        if (!ref.isEmpty()) {
            String name = ref.substring(ref.lastIndexOf('/') + 1);
            html.append(" <a href=\"#shape-").append(anchor(name)).append("\">");
            text(name);
            html.append("</a>");
        }
    }

    private JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? document.at(node.get("$ref").asText().substring(1)) : node;
    }

    /** Two cells, and the third one begun. */
    private void row(String first, String second) {
        html.append("<tr><td><code>");
        text(first);
        html.append("</code></td><td>");
        text(second);
        html.append("</td><td>");
    }

    private void link(String target, String words) {
        html.append("<li><a href=\"").append(target).append("\">");
        text(words);
        html.append("</a></li>");
    }

    private void paragraph(String words) {
        if (!words.isEmpty()) {
            html.append("<p>");
            text(words);
            html.append("</p>");
        }
    }

    private void text(String words) {
        html.append(words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;"));
    }

    private static String anchor(String words) {
        return words.replaceAll("[^A-Za-z0-9]", "-");
    }

    private static String hash(String text) {
        try {
            return Base64.getEncoder()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
