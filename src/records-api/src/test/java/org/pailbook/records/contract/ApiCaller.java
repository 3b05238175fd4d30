package org.pailbook.records.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Sends examples with one key to one service. */
record ApiCaller(String address, String key) {
    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    /** @param text empty if there was none */
    record Heard(int status, String mediaType, String text, HttpHeaders headers) {
        JsonNode json() {
            try {
                return ApiDocument.JSON.readTree(text);
            } catch (IOException broken) {
                throw new AssertionError("not JSON: " + text, broken);
            }
        }
    }

    /** Sends the example with real ids for shown ones. */
    Heard send(ApiExample example, ShownAndReal ids) {
        return send(example, ids, ids::real);
    }

    /** Sends the example, each text of it changed in that way. */
    Heard send(ApiExample example, ShownAndReal ids, UnaryOperator<String> changed) {
        JsonNode body = example.bodyOfToday(ids::learn);
        String text = body == null ? null : body.isTextual() ? body.asText() : body.toString();
        return send(
                example.operation().method(),
                target(example, changed),
                example.mediaType(),
                text == null ? null : changed.apply(text),
                example.in().getOrDefault("header", Map.of()));
    }

    Heard send(String method, String target, String mediaType, String body, Map<String, String> headers) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(address + target)).timeout(Duration.ofSeconds(60));
        if (key != null) {
            request.header("X-API-Key", key);
        }
        if (body != null) {
            request.header("Content-Type", mediaType);
        }
        headers.forEach(request::header);
        request.method(
                method,
                body == null
                        ? HttpRequest.BodyPublishers.noBody()
                        : HttpRequest.BodyPublishers.ofString(body, StandardCharsets.UTF_8));
        try {
            HttpResponse<String> answer =
                    CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
            String type = answer.headers().firstValue("content-type").orElse("");
            return new Heard(answer.statusCode(), type.split(";")[0], answer.body(), answer.headers());
        } catch (IOException failed) {
            throw new AssertionError("no answer to " + method + " " + target, failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new AssertionError(stopped);
        }
    }

    /** Path and query of the example. */
    static String target(ApiExample example, UnaryOperator<String> changed) {
        String path = example.operation().path();
        for (Map.Entry<String, String> value :
                example.in().getOrDefault("path", Map.of()).entrySet()) {
            path = path.replace("{" + value.getKey() + "}", encoded(changed.apply(value.getValue())));
        }
        String query = example.in().getOrDefault("query", Map.of()).entrySet().stream()
                .map(value -> value.getKey() + "=" + encoded(changed.apply(value.getValue())))
                .collect(Collectors.joining("&"));
        return query.isEmpty() ? path : path + "?" + query;
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
