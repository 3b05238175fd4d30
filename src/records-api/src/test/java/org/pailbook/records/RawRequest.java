package org.pailbook.records;

import io.restassured.RestAssured;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A request exactly as written here, byte for byte: a client made for comfort would mend half of what the service must refuse.
 *
 * @param path may hold names in braces, replaced when it is sent
 * @param headers name and value in turn; may hold names in braces too
 * @param body null for none
 */
record RawRequest(String method, String path, List<String> headers, byte[] body) {
    private static final HttpClient CLIENT = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    static RawRequest get(String path) {
        return new RawRequest("GET", path, List.of("X-API-Key", "{admin}"), null);
    }

    static RawRequest of(String method, String path) {
        return new RawRequest(method, path, List.of("X-API-Key", "{admin}"), null);
    }

    static RawRequest post(String path, String body) {
        return post(path, "application/json", body);
    }

    static RawRequest post(String path, String contentType, String body) {
        return new RawRequest(
                "POST",
                path,
                List.of("X-API-Key", "{admin}", "Content-Type", contentType),
                body.getBytes(StandardCharsets.UTF_8));
    }

    /** The same with another method. */
    RawRequest as(String otherMethod) {
        return new RawRequest(otherMethod, path, headers, body);
    }

    RawRequest inCharset(Charset charset) {
        return withBytes(new String(body, StandardCharsets.UTF_8).getBytes(charset));
    }

    RawRequest withText(String text) {
        return withBytes(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The same to another address. */
    RawRequest at(String otherPath) {
        return new RawRequest(method, otherPath, headers, body);
    }

    RawRequest withBytes(byte[] bytes) {
        return new RawRequest(method, path, headers, bytes);
    }

    RawRequest with(String name, String value) {
        List<String> more = new ArrayList<>(headers);
        more.add(name);
        more.add(value);
        return new RawRequest(method, path, more, body);
    }

    RawRequest without(String name) {
        List<String> fewer = new ArrayList<>();
        for (int i = 0; i < headers.size(); i += 2) {
            if (!headers.get(i).equals(name)) {
                fewer.add(headers.get(i));
                fewer.add(headers.get(i + 1));
            }
        }
        return new RawRequest(method, path, fewer, body);
    }

    /** Only this key, in this header. */
    RawRequest keyed(String header, String value) {
        return without("X-API-Key").with(header, value);
    }

    /** Sends it with the names in braces replaced. */
    Answer send(Map<String, String> names) {
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create("http://localhost:" + RestAssured.port + filled(path, names)))
                .timeout(Duration.ofSeconds(60));
        for (int i = 0; i < headers.size(); i += 2) {
            request.header(headers.get(i), filled(headers.get(i + 1), names));
        }
        request.method(
                method,
                body == null
                        ? HttpRequest.BodyPublishers.noBody()
                        : HttpRequest.BodyPublishers.ofByteArray(filledBody(names)));
        try {
            HttpResponse<byte[]> response = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
            Map<String, List<String>> received = new HashMap<>();
            response.headers().map().forEach((name, values) -> received.put(name.toLowerCase(Locale.ROOT), values));
            return new Answer(response.statusCode(), received, new String(response.body(), StandardCharsets.UTF_8));
        } catch (IOException failed) {
            throw new AssertionError("no answer to " + method + " " + path, failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new AssertionError(stopped);
        }
    }

    private byte[] filledBody(Map<String, String> names) {
        String text = new String(body, StandardCharsets.ISO_8859_1);
        return filled(text, names).getBytes(StandardCharsets.ISO_8859_1);
    }

    static String filled(String text, Map<String, String> names) {
        String filled = text;
        for (Map.Entry<String, String> name : names.entrySet()) {
            filled = filled.replace("{" + name.getKey() + "}", name.getValue());
        }
        return filled;
    }
}
