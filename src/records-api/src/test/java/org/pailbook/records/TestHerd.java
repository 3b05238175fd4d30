package org.pailbook.records;

import static io.restassured.RestAssured.given;

import io.restassured.RestAssured;
import io.restassured.config.EncoderConfig;
import io.restassured.http.ContentType;
import io.restassured.http.Header;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/** A herd of its own for a test, and the requests a well-behaved tool would send for it. */
final class TestHerd {
    static final String JSON = "application/json";
    static final String NDJSON = "application/x-ndjson";
    static final String CSV = "text/csv";
    static final String MERGE_PATCH = "application/merge-patch+json";
    static final String SCHEME = "example.eartag";

    private static final EncoderConfig AS_GIVEN = EncoderConfig.encoderConfig()
            .defaultContentCharset(StandardCharsets.UTF_8)
            .appendDefaultContentCharsetToContentTypeIfUndefined(false)
            .encodeContentTypeAs(NDJSON, ContentType.TEXT)
            .encodeContentTypeAs(CSV, ContentType.TEXT)
            .encodeContentTypeAs(MERGE_PATCH, ContentType.TEXT);

    private final String code;
    private final String key;

    private TestHerd(String code, String key) {
        this.code = code;
        this.key = key;
    }

    /** A new, empty herd in Dublin, reached with the administrator's key. */
    static TestHerd make() {
        return inZone("Europe/Dublin");
    }

    static TestHerd inZone(String zone) {
        String code = "t-" + UUID.randomUUID().toString().substring(0, 18);
        TestHerd herd = new TestHerd(code, DatabaseForTests.ADMIN_KEY);
        herd.send("POST", "/v1/herds", JSON, """
                {"code":"%s","name":"Herd %s","timeZone":"%s"}""".formatted(code, code, zone)).expecting(201);
        return herd;
    }

    /** The same herd seen with another key. */
    TestHerd withKey(String otherKey) {
        return new TestHerd(code, otherKey);
    }

    String code() {
        return code;
    }

    String path(String rest) {
        return "/v1/herds/" + code + rest;
    }

    /** A key made by the administrator. */
    static String key(String scopes, String herds, String expiresOn) {
        return newKey(scopes, herds, expiresOn).expecting(201).textAt("/key");
    }

    static Answer newKey(String scopes, String herds, String expiresOn) {
        String body = "{\"label\":\"a test\",\"scopes\":" + quoted(scopes) + ",\"herds\":" + quoted(herds)
                + (expiresOn == null ? "" : ",\"expiresOn\":\"" + expiresOn + "\"") + "}";
        return new TestHerd("", DatabaseForTests.ADMIN_KEY).send("POST", "/v1/keys", JSON, body);
    }

    private static String quoted(String words) {
        return List.of(words.split(" ")).stream().collect(Collectors.joining("\",\"", "[\"", "\"]"));
    }

    /** The member by which a record names an animal. */
    static String animal(String id) {
        return "{\"scheme\":\"" + SCHEME + "\",\"id\":\"" + id + "\"}";
    }

    static String testDayJson(String id, String date, double milkKg) {
        return "{\"animal\":" + animal(id) + ",\"date\":\"" + date + "\",\"milkKg\":" + milkKg + "}";
    }

    TestHerd withAnimal(String id) {
        return withAnimal(id, ",\"breed\":\"HOL\",\"sex\":\"female\"");
    }

    /** @param members further ones, each after a comma */
    TestHerd withAnimal(String id, String members) {
        post("animals", "{\"identifiers\":[" + animal(id) + "]" + members + "}").expecting(201);
        return this;
    }

    TestHerd withCalving(String id, String date, int parity) {
        post("calvings", "{\"animal\":" + animal(id) + ",\"date\":\"" + date + "\",\"parity\":" + parity + "}")
                .expecting(201);
        return this;
    }

    TestHerd withDryOff(String id, String date) {
        post("dry-offs", "{\"animal\":" + animal(id) + ",\"date\":\"" + date + "\"}")
                .expecting(201);
        return this;
    }

    TestHerd withDeparture(String id, String date, String kind) {
        post("departures", "{\"animal\":" + animal(id) + ",\"date\":\"" + date + "\",\"kind\":\"" + kind + "\"}")
                .expecting(201);
        return this;
    }

    TestHerd withTestDay(String id, String date, double milkKg, double fatPct) {
        post(
                        "test-days",
                        "{\"animal\":%s,\"date\":\"%s\",\"milkKg\":%s,\"fatPct\":%s}"
                                .formatted(animal(id), date, milkKg, fatPct))
                .expecting(201);
        return this;
    }

    TestHerd withTestDay(String id, String date, double milkKg) {
        post("test-days", testDayJson(id, date, milkKg)).expecting(201);
        return this;
    }

    Answer post(String kind, String json) {
        return send("POST", path("/" + kind), JSON, json);
    }

    Answer bulk(String kind, String mediaType, String body) {
        return bulk(kind, mediaType, body, "");
    }

    /** @param query with its question mark, or empty */
    Answer bulk(String kind, String mediaType, String body, String query) {
        return send("POST", path("/" + kind + "/bulk" + query), mediaType, body);
    }

    /** @param rest of the path after the herd's code */
    Answer get(String rest) {
        return send("GET", path(rest), null, null);
    }

    Answer getAnimal(String id, String rest) {
        return get("/animals/" + SCHEME + "%3A" + id + rest);
    }

    Answer send(String method, String path, String mediaType, String body) {
        return send(method, path, mediaType, body, Map.of());
    }

    /** @param rest of the path after the herd's code */
    Answer put(String rest, String ifMatch, String json) {
        return send("PUT", path(rest), JSON, json, Map.of("If-Match", ifMatch));
    }

    Answer patch(String rest, String ifMatch, String json) {
        return send("PATCH", path(rest), MERGE_PATCH, json, Map.of("If-Match", ifMatch));
    }

    Answer delete(String rest, String ifMatch) {
        return send("DELETE", path(rest), null, null, Map.of("If-Match", ifMatch));
    }

    /** @param headers further ones, names and values */
    Answer send(String method, String path, String mediaType, String body, Map<String, String> headers) {
        RequestSpecification request = given().config(RestAssured.config().encoderConfig(AS_GIVEN))
                .urlEncodingEnabled(false)
                .header("X-API-Key", key)
                .headers(headers);
        if (body != null) {
            request.contentType(mediaType).body(body);
        }
        return answer(request.request(method, path));
    }

    private static Answer answer(Response response) {
        Map<String, List<String>> headers = response.getHeaders().asList().stream()
                .collect(Collectors.groupingBy(
                        header -> header.getName().toLowerCase(Locale.ROOT),
                        Collectors.mapping(Header::getValue, Collectors.toList())));
        return new Answer(response.statusCode(), headers, new String(response.asByteArray(), StandardCharsets.UTF_8));
    }
}
