package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Random requests made from a description: operations with values of their examples, of their schemas, and with all that goes wrong on the
 * way. With the same seed always the same ones.
 */
final class RandomRequests {
    private static final List<String> METHODS = List.of("GET", "POST", "PUT", "PATCH", "DELETE", "HEAD", "OPTIONS");
    private static final List<String> MEDIA_TYPES = List.of(
            "application/json",
            "text/csv",
            "application/x-ndjson",
            "application/merge-patch+json",
            "application/json; charset=utf-16",
            "text/csv; charset=latin1",
            "text/plain",
            "multipart/form-data; boundary=x",
            "multipart/form-data",
            "application/",
            ";;;",
            "*/*",
            "application/xml");
    private static final List<String> ACCEPTED = List.of(
            "*/*", "application/json", "text/html", "text/csv", "application/xml", "a/b;q=x", ",", "application/*;q=0");
    private static final List<String> TAGS =
            List.of("*", "\"1\"", "\"2\"", "W/\"1\"", "1", "\"\"", "\"1\", \"2\"", "\"99999999999999999999\"", "\"x");
    private static final List<String> ODD_TEXTS = List.of(
            "",
            " ",
            "%00",
            "..",
            "../../etc/passwd",
            "null",
            "-1",
            "0",
            "1e999",
            "NaN",
            "9223372036854775808",
            "2025-02-30",
            "2025-11-12",
            "1899-12-31",
            "true",
            "' OR 1=1 --",
            "<script>alert(1)</script>",
            "${jndi:ldap://x}",
            "{{7*7}}",
            "\u0000",
            "\u00e4\u20ac\ud83d\udc04",
            "\ud83d",
            "a:b:c",
            "example.eartag:FB-0311",
            "00000000-0000-0000-0000-000000000000",
            "0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55",
            "x".repeat(5000));

    /** @param text as it goes over the wire, one character a byte */
    record Request(String method, String operation, String text) {}

    private final Random random;
    private final List<ApiOperation> operations;
    private final ShownAndReal ids;
    private final String key;
    private final RandomBodies bodies;
    /** Whether all but the body is to be right, so that bodies get past the first gates. */
    private boolean calm;

    RandomRequests(ApiDocument document, ShownAndReal ids, String key, long seed) {
        this.operations = document.operations();
        this.ids = ids;
        this.key = key;
        this.random = new Random(seed);
        this.bodies = new RandomBodies(document, random);
    }

    Request next() {
        ApiOperation operation = pick(operations);
        calm = random.nextBoolean();
        List<ApiExample> examples = operation.examples();
        ApiExample example = examples.isEmpty() ? null : pick(examples);
        String method = oneIn(20) ? pick(METHODS) : operation.method();
        StringBuilder head = new StringBuilder();
        head.append(method).append(' ').append(target(operation, example)).append(" HTTP/1.1\r\nHost: localhost\r\n");
        head.append("Connection: close\r\n");
        addKey(head);
        addHeaders(head, operation, example);
        byte[] body = body(operation, example);
        String sent = body == null ? "" : new String(body, StandardCharsets.ISO_8859_1);
        if (body != null) {
            String usual = example != null && example.mediaType() != null ? example.mediaType() : "application/json";
            if (!oneIn(40)) {
                head.append("Content-Type: ")
                        .append(oneIn(12) ? pick(MEDIA_TYPES) : usual)
                        .append("\r\n");
            }
            if (oneIn(10)) {
                head.append("Transfer-Encoding: chunked\r\n");
                sent = (sent.isEmpty() ? "" : Integer.toHexString(sent.length()) + "\r\n" + sent + "\r\n")
                        + "0\r\n\r\n";
            } else {
                head.append("Content-Length: ").append(sent.length()).append("\r\n");
            }
        }
        return new Request(method, operation.id(), head + "\r\n" + sent);
    }

    private String target(ApiOperation operation, ApiExample example) {
        String path = operation.path();
        List<String> query = new ArrayList<>();
        for (JsonNode parameter : operation.parameters()) {
            String name = parameter.get("name").asText();
            String in = parameter.get("in").asText();
            String usual = example == null
                    ? null
                    : example.in().getOrDefault(in, Map.of()).get(name);
            String value = usual == null || oneIn(8) ? pick(ODD_TEXTS) : ids.real(usual);
            if (in.equals("path")) {
                path = path.replace("{" + name + "}", encoded(value));
            } else if (in.equals("query") && (usual == null ? oneIn(4) : !oneIn(5))) {
                query.add(name + "=" + encoded(value));
                if (oneIn(30)) {
                    query.add(name + "=" + encoded(pick(ODD_TEXTS)));
                }
            }
        }
        if (oneIn(25)) {
            query.add(encoded(pick(ODD_TEXTS)) + "=" + encoded(pick(ODD_TEXTS)));
        }
        if (oneIn(60)) {
            query.add(pick(List.of("%zz", "%", "&&&", "=", "a=%C3%28")));
        }
        if (oneIn(40)) {
            path = pick(
                    List.of(path + "/", path + "/x", path.toUpperCase(), path.replace("/v1", "//v1"), path + "%2F"));
        }
        return query.isEmpty() ? path : path + "?" + String.join("&", query);
    }

    private void addKey(StringBuilder head) {
        int way = calm ? -1 : random.nextInt(30);
        switch (way) {
            case 0 -> head.append("Authorization: Bearer ").append(key).append("\r\n");
            case 1 -> head.append("X-API-Key: pb_wrong\r\n");
            case 2 -> head.append("Authorization: Basic %%%\r\n");
            case 3 -> {
                // none
            }
            case 4 -> head.append("X-API-Key: ").append(key).append("\r\nAuthorization: Bearer other\r\n");
            default -> head.append("X-API-Key: ").append(key).append("\r\n");
        }
    }

    private void addHeaders(StringBuilder head, ApiOperation operation, ApiExample example) {
        for (JsonNode parameter : operation.parameters()) {
            String name = parameter.get("name").asText();
            String usual = example == null
                    ? null
                    : example.in().getOrDefault("header", Map.of()).get(name);
            boolean isUsual = usual != null || parameter.path("required").asBoolean();
            if (parameter.get("in").asText().equals("header") && (calm ? isUsual : !oneIn(10))) {
                String value = oneIn(3) ? pick(TAGS) : oneIn(3) || usual == null ? "*" : usual;
                head.append(name).append(": ").append(value).append("\r\n");
            }
        }
        if (oneIn(6)) {
            head.append("Accept: ").append(pick(ACCEPTED)).append("\r\n");
        }
        if (oneIn(12)) {
            head.append(pick(List.of(
                            "If-None-Match: \"1\"",
                            "If-None-Match: x",
                            "Idempotency-Key: abcdefgh12345678",
                            "Idempotency-Key: x",
                            "Content-Encoding: gzip",
                            "Accept-Encoding: gzip",
                            "Accept-Language: pt",
                            "Range: bytes=0-1",
                            "If-Modified-Since: yesterday",
                            "Origin: http://x.example",
                            "X-Forwarded-For: 1.2.3.4",
                            "Cookie: a=b",
                            "X-Long: " + "y".repeat(3000))))
                    .append("\r\n");
        }
    }

    private byte[] body(ApiOperation operation, ApiExample example) {
        if (operation.bodyForms().isEmpty()) {
            return oneIn(30) ? "{}".getBytes(StandardCharsets.UTF_8) : null;
        }
        if (oneIn(40)) {
            return null;
        }
        return calm && random.nextBoolean() ? bodies.right(example, ids) : bodies.next(operation, example, ids);
    }

    private String encoded(String value) {
        return URLEncoder.encode(value, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private boolean oneIn(int times) {
        return !calm && random.nextInt(times) == 0;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
