package org.pailbook.records;

import static org.pailbook.records.BadRequest.of;
import static org.pailbook.records.BadRequest.parameter;
import static org.pailbook.records.BadRequest.refused;
import static org.pailbook.records.RawRequest.get;
import static org.pailbook.records.RawRequest.post;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.stream.Stream;

/**
 * The table of bad requests. {@code {herd}} has the animals A1 (born 2020-01-01, calved 2025-08-19), A2 and GONE (calved 2024-01-10, left
 * 2025-06-01); each named key is what its name says.
 */
final class BadRequests {
    private static final String HERD = "/v1/herds/{herd}";
    private static final String TEST_DAYS = HERD + "/test-days";
    private static final String BULK = TEST_DAYS + "/bulk";
    private static final String ANIMAL = HERD + "/animals/example.eartag%3AA1";
    private static final String JSON = "application/json";
    private static final String NDJSON = "application/x-ndjson";
    private static final String CSV = "text/csv";
    private static final String HEADER = "animal_scheme,animal_id,date,milk_kg\n";
    private static final String GOOD_LINE = "example.eartag,A1,2025-11-12,27.4\n";

    private BadRequests() {}

    static Stream<BadRequest> all() {
        return Stream.of(
                        json(),
                        values(),
                        bytes(),
                        routes(),
                        parameters(),
                        paths(),
                        keys(),
                        records(),
                        herds(),
                        bulk(),
                        changes(),
                        versions())
                .flatMap(rows -> rows);
    }

    /** A test day of A1 with these further members. */
    private static RawRequest day(String members) {
        return post(TEST_DAYS, dayJson(members));
    }

    private static String dayJson(String members) {
        return "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"A1\"},\"date\":\"2025-11-12\"" + members + "}";
    }

    private static RawRequest dated(String date) {
        return post(TEST_DAYS, dayJson(",\"milkKg\":27.4").replace("\"2025-11-12\"", date));
    }

    private static RawRequest event(String kind, String animal, String date, String members) {
        return post(
                HERD + "/" + kind,
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"" + animal + "\"},\"date\":\"" + date + "\""
                        + members + "}");
    }

    private static RawRequest animal(String members) {
        return post(HERD + "/animals", "{" + members + "}");
    }

    private static String base64(String text) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Stream<BadRequest> json() {
        return Stream.of(
                of("JSON that breaks off", post(TEST_DAYS, "{\"animal\":"), 400, "malformed-json", "~line 1"),
                of("JSON in single quotes", post(TEST_DAYS, "{'milkKg':1}"), 400, "malformed-json", "~line 1"),
                of("a comment in JSON", day("/* fat */"), 400, "malformed-json", "~line 1"),
                of("a comma too many", day(",\"milkKg\":27.4,"), 400, "malformed-json", "~line 1"),
                of("a doubled member", day(",\"milkKg\":1,\"milkKg\":2"), 400, "malformed-json", "~twice"),
                of("text after the value", post(TEST_DAYS, dayJson("") + " x"), 400, "malformed-json", "~line 1"),
                of("two values", post(TEST_DAYS, dayJson("") + "{}"), 400, "malformed-json", "~more text"),
                of("NaN", day(",\"milkKg\":NaN"), 400, "malformed-json", "~line 1"),
                of("Infinity", day(",\"milkKg\":Infinity"), 400, "malformed-json", "~line 1"),
                of("a leading zero", day(",\"milkKg\":027"), 400, "malformed-json", "~line 1"),
                of("a leading plus", day(",\"milkKg\":+27"), 400, "malformed-json", "~line 1"),
                of("nesting 70 deep", day(",\"x\":" + "[".repeat(70)), 413, "too-large", "~limit"),
                of("a text of 70,000", day(",\"note\":\"" + "x".repeat(70_000) + "\""), 413, "too-large", "~limit"),
                of("a number of 50 digits", day(",\"milkKg\":" + "1".repeat(50)), 413, "too-large", "~limit"),
                of("an exponent beyond int", day(",\"milkKg\":1e99999999999"), 400, "malformed-json", "~line 1"),
                of("an empty body", post(TEST_DAYS, ""), 400, "empty-body", ""),
                of("a blank body", post(TEST_DAYS, " \n "), 400, "empty-body", ""),
                of("null as body", post(TEST_DAYS, "null"), 400, "empty-body", "~null is none"),
                refused("an array as body", post(TEST_DAYS, "[]"), "not-an-object", "/"),
                refused("a text as body", post(TEST_DAYS, "\"A1\""), "not-an-object", "/"),
                refused("a number as body", post(TEST_DAYS, "27.4"), "not-an-object", "/"),
                of("a body of 2 MB for one record", day(" ".repeat(2 << 20)), 413, "too-large", "~1048576"));
    }

    private static Stream<BadRequest> values() {
        return Stream.of(
                refused("1e999", day(",\"milkKg\":1e999"), "not-finite", "/milkKg"),
                refused("1e999999999", day(",\"milkKg\":1e999999999"), "not-finite", "/milkKg"),
                refused("1e-999999999", day(",\"milkKg\":1e-999999999"), "too-precise", "/milkKg"),
                refused("text with comma for a number", day(",\"milkKg\":\"27,4\""), "not-a-number", "/milkKg"),
                refused("text for a number", day(",\"milkKg\":\"27.4\""), "not-a-number", "/milkKg"),
                refused("true for a number", day(",\"milkKg\":true"), "not-a-number", "/milkKg"),
                refused("an array for a number", day(",\"milkKg\":[27.4]"), "not-a-number", "/milkKg"),
                refused("an object for a number", day(",\"fatPct\":{}"), "not-a-number", "/fatPct"),
                refused("null for a number", day(",\"milkKg\":null"), "null-value", "/milkKg"),
                refused("a number for a text", day(",\"source\":5"), "not-a-text", "/source"),
                refused("null for a date", dated("null"), "null-value", "/date"),
                refused("an array for a date", dated("[2025,11,12]"), "not-a-date", "/date"),
                refused("a number for a date", dated("20251112"), "not-a-date", "/date"),
                refused("a date with time", dated("\"2025-11-12T06:00:00Z\""), "not-a-date", "/date"),
                refused("30 February", dated("\"2025-02-30\""), "not-a-date", "/date"),
                refused("29 February of a common year", dated("\"2025-02-29\""), "not-a-date", "/date"),
                refused("month 13", dated("\"2025-13-01\""), "not-a-date", "/date"),
                refused("day first", dated("\"12.11.2025\""), "not-a-date", "/date"),
                refused("a date without zeros", dated("\"2025-1-2\""), "not-a-date", "/date"),
                refused("a year of two digits", dated("\"0025-11-12\""), "not-a-date", "/date"),
                refused("an unknown member", day(",\"fatPercent\":4.1"), "unknown-field", "/fatPercent"),
                refused("a member in other case", day(",\"MilkKg\":27"), "unknown-field", "/MilkKg"),
                refused("a member with slash", day(",\"a/b\":27"), "unknown-field", "/a~1b"),
                refused("no animal", post(TEST_DAYS, "{\"date\":\"2025-11-12\"}"), "required", "/animal"),
                refused("nothing at all", post(TEST_DAYS, "{}"), "required", "/date"),
                refused("too precise", day(",\"milkKg\":27.123456789012"), "too-precise", "/milkKg"),
                refused("a text too long", day(",\"source\":\"" + "x".repeat(201) + "\""), "text-too-long", "/source"),
                refused("a control character", day(",\"source\":\"a\\u0007b\""), "control-character", "/source"),
                refused("a NUL", day(",\"source\":\"a\\u0000b\""), "control-character", "/source"),
                refused("half a character", day(",\"source\":\"a\\ud800b\",\"milkKg\":27"), "not-unicode", "/source"),
                refused("a blank text", day(",\"source\":\"  \""), "empty-text", "/source"),
                refused("an animal as text", post(TEST_DAYS, "{\"animal\":\"A1\"}"), "not-an-object", "/animal"),
                refused("an animal without id", post(TEST_DAYS, "{\"animal\":{}}"), "required", "/animal/id"),
                refused(
                        "an animal with more",
                        post(TEST_DAYS, "{\"animal\":{\"id\":\"A1\",\"tag\":\"x\"}}"),
                        "unknown-field",
                        "/animal/tag"),
                refused("an id of the source alone", day(",\"sourceId\":\"7\""), "required", "/source"));
    }

    private static Stream<BadRequest> bytes() {
        RawRequest good = day(",\"milkKg\":27.4");
        return Stream.of(
                of(
                        "plain text",
                        post(TEST_DAYS, "text/plain", "A1 27.4"),
                        415,
                        "unsupported-media-type",
                        "~application/json"),
                of("no content type", good.without("Content-Type"), 415, "unsupported-media-type", ""),
                new BadRequest(
                        "a content type of nonsense",
                        post(TEST_DAYS, "nonsense", "{}"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Content-Type"),
                of(
                        "a form",
                        post(TEST_DAYS, "application/x-www-form-urlencoded", "a=1"),
                        415,
                        "unsupported-media-type",
                        ""),
                of("a table where one record goes", post(TEST_DAYS, CSV, HEADER), 415, "unsupported-media-type", ""),
                of(
                        "charset latin1",
                        post(TEST_DAYS, JSON + "; charset=ISO-8859-1", "{}"),
                        415,
                        "unsupported-media-type",
                        "~UTF-8"),
                of(
                        "a charset nobody knows",
                        post(TEST_DAYS, JSON + ";charset=x-none", "{}"),
                        415,
                        "unsupported-media-type",
                        "~UTF-8"),
                of("gzip", good.with("Content-Encoding", "gzip"), 415, "unsupported-media-type", "~Content-Encoding"),
                of("UTF-16 with mark", good.inCharset(StandardCharsets.UTF_16), 400, "not-utf8", "~UTF-8"),
                of("UTF-16 without mark", good.inCharset(StandardCharsets.UTF_16LE), 400, "malformed-json", "~line 1"),
                of(
                        "latin1 bytes",
                        day(",\"source\":\"Açor\"").inCharset(StandardCharsets.ISO_8859_1),
                        400,
                        "not-utf8",
                        "~UTF-8"),
                of(
                        "latin1 bytes in a table",
                        post(BULK, CSV, HEADER + "é,A1,2025-11-12,27.4\n").inCharset(StandardCharsets.ISO_8859_1),
                        400,
                        "not-utf8",
                        "~UTF-8"),
                of("a key's body of nonsense", post("/v1/keys", "{"), 400, "malformed-json", "~line 1"),
                of(
                        "a key's body in plain text",
                        post("/v1/keys", "text/plain", "{}"),
                        415,
                        "unsupported-media-type",
                        ""));
    }

    private static Stream<BadRequest> routes() {
        return Stream.of(
                of("an unknown route", get("/v1/cows"), 404, "no-such-route", ""),
                of("an unknown route outside", get("/cows"), 404, "no-such-route", ""),
                of("an unknown route below", get(HERD + "/milk"), 404, "no-such-route", ""),
                of("an unknown route below an animal", get(ANIMAL + "/milk"), 404, "no-such-route", ""),
                of("DELETE on a list", RawRequest.of("DELETE", TEST_DAYS), 405, "method-not-allowed", "@Allow"),
                of("PUT on all herds", RawRequest.of("PUT", "/v1/herds"), 405, "method-not-allowed", "@Allow"),
                of(
                        "PATCH on all animals",
                        RawRequest.of("PATCH", HERD + "/animals"),
                        405,
                        "method-not-allowed",
                        "@Allow"),
                of("POST on a summary", post(HERD + "/summary", "{}"), 405, "method-not-allowed", "@Allow"),
                parameter(
                        "an address of 9,000",
                        get(HERD + "?" + "x".repeat(9_000) + "=1"),
                        "unknown-parameter",
                        "x".repeat(80) + "…"),
                of("HTML wanted", get(HERD + "/summary").with("Accept", "text/html"), 406, "not-acceptable", ""),
                of("XML wanted", get(TEST_DAYS).with("Accept", "application/xml"), 406, "not-acceptable", ""));
    }

    private static Stream<BadRequest> parameters() {
        return Stream.of(
                parameter(
                        "an accuracy asof",
                        get(HERD + "/projection-accuracy?asof=2025-01-01"),
                        "unknown-parameter",
                        "asof"),
                parameter(
                        "an accuracy of yesterday",
                        get(HERD + "/projection-accuracy?asOf=yesterday"),
                        "bad-parameter",
                        "asOf"),
                parameter(
                        "a dry-off soon",
                        get(ANIMAL + "/lactations/current?dryOffDate=soon"),
                        "bad-parameter",
                        "dryOffDate"),
                parameter(
                        "a dry-off before the calving",
                        get(ANIMAL + "/lactations/current?asOf=2025-10-01&dryOffDate=2025-08-01"),
                        "bad-parameter",
                        "dryOffDate"),
                parameter("daily perhaps", get(ANIMAL + "/lactations/current?daily=perhaps"), "bad-parameter", "daily"),
                parameter(
                        "asOf beside JSON to project",
                        post("/v1/calculate/projections?asOf=2025-01-01", "{\"lactations\":[]}"),
                        "bad-parameter",
                        "asOf"),
                refused(
                        "a lactation to project without id",
                        post(
                                "/v1/calculate/projections",
                                "{\"lactations\":[{\"calvingDate\":\"2025-01-01\",\"testDays\":[]}]}"),
                        "required",
                        "/lactations/0/id"),
                refused(
                        "a history that is no list",
                        post("/v1/calculate/projections", "{\"lactations\":[],\"history\":7}"),
                        "not-an-array",
                        "/history"),
                new BadRequest(
                        "an unknown column to project",
                        post("/v1/calculate/projections", CSV, "animal,milk\nA1,2\n"),
                        400,
                        "malformed-csv",
                        "unknown-column",
                        "/header"),
                refused("a cow to value that is not there", post("/v1/calculate/cow-value", "{}"), "required", "/cow"),
                refused(
                        "a cow to value in two stages",
                        post(
                                "/v1/calculate/cow-value",
                                "{\"cow\":{\"parity\":2,\"daysInMilk\":90,\"calvingDate\":\"2025-01-01\"}}"),
                        "not-together",
                        "/cow/daysInMilk"),
                refused(
                        "a heifer cheaper than her sale",
                        post(
                                "/v1/calculate/cow-value",
                                "{\"cow\":{\"parity\":2,\"daysInMilk\":90},\"prices\":{\"heiferCu\":500}}"),
                        "contradictory-prices",
                        "/prices/heiferCu"),
                refused(
                        "a price beyond all prices",
                        post(
                                "/v1/calculate/cow-value",
                                "{\"cow\":{\"parity\":2,\"daysInMilk\":90},\"prices\":{\"milkCuPerKg\":1e300}}"),
                        "out-of-range",
                        "/prices/milkCuPerKg"),
                refused(
                        "a yes for true",
                        post(
                                "/v1/calculate/cow-value",
                                "{\"cow\":{\"parity\":2,\"daysInMilk\":90,\"isToBeBred\":\"yes\"}}"),
                        "not-a-boolean",
                        "/cow/isToBeBred"),
                refused(
                        "a parity of the herd twice",
                        post(
                                "/v1/calculate/cow-value",
                                "{\"cow\":{\"parity\":2,\"daysInMilk\":90},\"parities\":[{\"parity\":1},{\"parity\":1}]}"),
                        "twice",
                        "/parities/1/parity"),
                of(
                        "a projection of 33 MB",
                        post("/v1/calculate/projections", " \n".repeat(33 << 19)),
                        413,
                        "too-large",
                        "~33554432"),
                parameter("asof for asOf", get(HERD + "/summary?asof=2025-01-01"), "unknown-parameter", "asof"),
                parameter("a parameter too many", get(HERD + "?x=1"), "unknown-parameter", "x"),
                parameter(
                        "a parameter on a post", day("").at(TEST_DAYS + "?dryRun=true"), "unknown-parameter", "dryRun"),
                new BadRequest(
                        "a key in the address",
                        get(HERD + "?key=pb_secret"),
                        400,
                        "unknown-parameter",
                        "key-in-address",
                        "?key"),
                new BadRequest(
                        "a key under another name",
                        get("/v1/herds?limit=pb_secretab_0123456789012345678901234567890123456789012"),
                        400,
                        "unknown-parameter",
                        "key-in-address",
                        "?limit"),
                new BadRequest(
                        "a parameter twice",
                        get(TEST_DAYS + "?limit=1&limit=2"),
                        400,
                        "unknown-parameter",
                        "repeated-parameter",
                        "?limit"),
                parameter("limit 0", get(TEST_DAYS + "?limit=0"), "bad-parameter", "limit"),
                parameter("limit 1001", get(TEST_DAYS + "?limit=1001"), "bad-parameter", "limit"),
                parameter("limit in words", get(HERD + "/animals?limit=ten"), "bad-parameter", "limit"),
                parameter("an empty limit", get("/v1/herds?limit="), "bad-parameter", "limit"),
                parameter("a cursor of nonsense", get(TEST_DAYS + "?cursor=***"), "bad-cursor", "cursor"),
                parameter("a made-up cursor", get(TEST_DAYS + "?cursor=" + base64("abc")), "bad-cursor", "cursor"),
                parameter(
                        "a cursor without id",
                        get(TEST_DAYS + "?cursor=" + base64("2025-01-01 x")),
                        "bad-cursor",
                        "cursor"),
                parameter(
                        "a cursor with NUL",
                        get(TEST_DAYS + "?cursor=" + base64("2025-01-01 \0")),
                        "bad-cursor",
                        "cursor"),
                parameter(
                        "a made-up animals cursor",
                        get(HERD + "/animals?cursor=" + base64("abc")),
                        "bad-cursor",
                        "cursor"),
                parameter("a made-up herds cursor", get("/v1/herds?cursor=" + base64("A B")), "bad-cursor", "cursor"),
                parameter("an herds cursor with NUL", get("/v1/herds?cursor=" + base64("a\0")), "bad-cursor", "cursor"),
                parameter("from month 13", get(TEST_DAYS + "?from=2025-13-01"), "bad-parameter", "from"),
                parameter("to in words", get(TEST_DAYS + "?to=yesterday"), "bad-parameter", "to"),
                parameter("asOf 30 February", get(HERD + "/summary?asOf=2025-02-30"), "bad-parameter", "asOf"),
                parameter("an empty asOf", get(HERD + "/summary?asOf="), "bad-parameter", "asOf"),
                parameter("asOf with time", get(ANIMAL + "/summary?asOf=2025-02-03T00:00"), "bad-parameter", "asOf"),
                parameter("asOf on a list", get(TEST_DAYS + "?asOf=x"), "bad-parameter", "asOf"),
                parameter("explain yes", get(ANIMAL + "/lactations?explain=yes"), "bad-parameter", "explain"),
                parameter(
                        "no such formula",
                        get(ANIMAL + "/lactations?correctedMilk=fcm"),
                        "bad-parameter",
                        "correctedMilk"),
                parameter("no such curve", get(ANIMAL + "/lactations/current?curve=line"), "bad-parameter", "curve"),
                parameter("dryRun 1", post(BULK + "?dryRun=1", "[]"), "bad-parameter", "dryRun"),
                parameter("atomic yes", post(BULK + "?atomic=yes", "[]"), "bad-parameter", "atomic"),
                parameter("report some", post(BULK + "?report=some", "[]"), "bad-parameter", "report"));
    }

    private static Stream<BadRequest> paths() {
        return Stream.of(
                parameter("parity in words", get(ANIMAL + "/lactations/first"), "bad-path", "parity"),
                parameter("lactation 0", get(ANIMAL + "/lactations/0"), "bad-path", "parity"),
                parameter("parity -1", get(ANIMAL + "/lactations/-1"), "bad-path", "parity"),
                of("no such herd", get("/v1/herds/no-such-herd"), 404, "not-found", ""),
                of("a herd with NUL", get("/v1/herds/a%00b"), 404, "not-found", ""),
                of("no such animal", get(HERD + "/animals/example.eartag%3ANONE"), 404, "not-found", ""),
                of("an animal without scheme", get(HERD + "/animals/A1"), 404, "not-found", ""),
                of("an animal with NUL", get(HERD + "/animals/example.eartag%3AA%001"), 404, "not-found", ""),
                of("no such animal as filter", get(TEST_DAYS + "?animal=x:y"), 404, "not-found", ""),
                of("an animal with NUL as filter", get(TEST_DAYS + "?animal=x:%00"), 404, "not-found", ""),
                of("no such test day", get(TEST_DAYS + "/0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55"), 404, "not-found", ""),
                of("an id that is none", get(TEST_DAYS + "/17"), 404, "not-found", ""),
                of("an id with NUL", get(HERD + "/calvings/a%00b"), 404, "not-found", ""),
                of("lactations of no animal", get(HERD + "/animals/x%3Ay/lactations"), 404, "not-found", ""),
                of("summary of no animal", get(HERD + "/animals/x%3Ay/summary"), 404, "not-found", ""),
                of("no such key", RawRequest.of("DELETE", "/v1/keys/17"), 404, "not-found", ""),
                of("a key with NUL", RawRequest.of("DELETE", "/v1/keys/a%00"), 404, "not-found", ""));
    }

    private static Stream<BadRequest> keys() {
        RawRequest list = get(TEST_DAYS);
        RawRequest write = day(",\"milkKg\":27.4");
        String noColon = Base64.getEncoder().encodeToString("nocolon".getBytes(StandardCharsets.UTF_8));
        return Stream.of(
                of("no key", list.without("X-API-Key"), 401, "not-authenticated", "@WWW-Authenticate"),
                of("no key on a post", write.without("X-API-Key"), 401, "not-authenticated", "@WWW-Authenticate"),
                of("an unknown key", list.keyed("X-API-Key", "pb_none"), 401, "not-authenticated", "@WWW-Authenticate"),
                of(
                        "an unknown Bearer",
                        list.keyed("Authorization", "Bearer x"),
                        401,
                        "not-authenticated",
                        "@WWW-Authenticate"),
                of("a revoked key", list.keyed("X-API-Key", "{revoked}"), 401, "key-revoked", "@WWW-Authenticate"),
                of("an expired key", list.keyed("X-API-Key", "{expired}"), 401, "key-expired", "@WWW-Authenticate"),
                new BadRequest(
                        "two keys",
                        list.with("Authorization", "Bearer x"),
                        400,
                        "bad-header",
                        "two-keys",
                        "@Authorization"),
                new BadRequest(
                        "Basic that is no base64",
                        list.keyed("Authorization", "Basic ???"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Authorization"),
                new BadRequest(
                        "Basic without colon",
                        list.keyed("Authorization", "Basic " + noColon),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Authorization"),
                new BadRequest(
                        "Digest",
                        list.keyed("Authorization", "Digest username=x"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Authorization"),
                of("writing with a reading key", write.keyed("X-API-Key", "{reader}"), 403, "scope-missing", "~write"),
                of("reading with a writing key", list.keyed("X-API-Key", "{writer}"), 403, "scope-missing", "~read"),
                of(
                        "a file with a reading key",
                        post(BULK, "[]").keyed("X-API-Key", "{reader}"),
                        403,
                        "scope-missing",
                        "~write"),
                of(
                        "a herd with a herd's key",
                        post("/v1/herds", "{\"code\":\"x\",\"name\":\"x\",\"timeZone\":\"UTC\"}")
                                .keyed("X-API-Key", "{writer}"),
                        403,
                        "scope-missing",
                        "~all herds"),
                of(
                        "keys with a reading key",
                        get("/v1/keys").keyed("X-API-Key", "{reader}"),
                        403,
                        "scope-missing",
                        "~admin"),
                of("another herd's key", list.keyed("X-API-Key", "{stranger}"), 404, "not-found", ""),
                of("writing with another herd's key", write.keyed("X-API-Key", "{stranger}"), 404, "not-found", ""),
                refused(
                        "a scope nobody knows",
                        post("/v1/keys", "{\"label\":\"x\",\"scopes\":[\"own\"],\"herds\":[\"*\"]}"),
                        "unknown-code",
                        "/scopes"),
                refused(
                        "no scope",
                        post("/v1/keys", "{\"label\":\"x\",\"scopes\":[],\"herds\":[\"*\"]}"),
                        "required",
                        "/scopes"),
                refused(
                        "all herds and one",
                        post("/v1/keys", "{\"label\":\"x\",\"scopes\":[\"read\"],\"herds\":[\"*\",\"a\"]}"),
                        "bad-code",
                        "/herds"),
                refused(
                        "an expiry in words",
                        post(
                                "/v1/keys",
                                "{\"label\":\"x\",\"scopes\":[\"read\"],\"herds\":[\"*\"],\"expiresOn\":\"never\"}"),
                        "not-a-date",
                        "/expiresOn"));
    }

    private static Stream<BadRequest> records() {
        return Stream.of(
                new BadRequest(
                        "an unknown animal",
                        event("test-days", "NONE", "2025-11-12", ",\"milkKg\":27"),
                        422,
                        "unknown-animal",
                        "unknown-animal",
                        "/animal"),
                new BadRequest(
                        "an unknown scheme",
                        day("").withText(dayJson(",\"milkKg\":1").replace("eartag", "chip")),
                        422,
                        "unknown-animal",
                        "unknown-animal",
                        "/animal"),
                refused("a date to come", dated("\"2099-01-01\""), "date-in-future", "/date"),
                refused("before birth", dated("\"2019-12-31\""), "before-birth", "/date"),
                refused(
                        "a test after she left",
                        event("test-days", "GONE", "2025-06-02", ",\"milkKg\":27"),
                        "after-departure",
                        "/date"),
                refused(
                        "a dry-off after she left",
                        event("dry-offs", "GONE", "2025-06-02", ""),
                        "after-departure",
                        "/date"),
                refused(
                        "left twice",
                        event("departures", "GONE", "2025-07-01", ",\"kind\":\"sale\""),
                        "departed-already",
                        "/date"),
                refused(
                        "calvings 199 days apart",
                        event("calvings", "A1", "2026-03-06", ""),
                        "calvings-too-close",
                        "/date"),
                refused(
                        "calvings 199 days apart, earlier",
                        event("calvings", "A1", "2025-02-01", ""),
                        "calvings-too-close",
                        "/date"),
                refused("cells per mL", day(",\"sccThousandPerMl\":96000"), "scc-unit-suspect", "/sccThousandPerMl"),
                refused("negative cells", day(",\"sccThousandPerMl\":-1"), "negative-value", "/sccThousandPerMl"),
                refused("fat 38", day(",\"fatPct\":38"), "percent-unit-suspect", "/fatPct"),
                refused("protein 33", day(",\"proteinPct\":33"), "percent-unit-suspect", "/proteinPct"),
                refused("lactose 48", day(",\"lactosePct\":48"), "percent-unit-suspect", "/lactosePct"),
                refused("negative milk", day(",\"milkKg\":-0.1"), "negative-value", "/milkKg"),
                refused("milk 200", day(",\"milkKg\":200"), "milk-unit-suspect", "/milkKg"),
                refused("nothing measured", day(""), "nothing-measured", "/"),
                refused("parity 0", event("calvings", "A2", "2025-08-19", ",\"parity\":0"), "out-of-range", "/parity"),
                refused(
                        "parity 1.5",
                        event("calvings", "A2", "2025-08-19", ",\"parity\":1.5"),
                        "not-an-integer",
                        "/parity"),
                refused(
                        "parity as text",
                        event("calvings", "A2", "2025-08-19", ",\"parity\":\"3\""),
                        "not-an-integer",
                        "/parity"),
                refused("ease 9", event("calvings", "A2", "2025-08-19", ",\"ease\":9"), "out-of-range", "/ease"),
                refused(
                        "Sale for sale",
                        event("departures", "A1", "2025-12-01", ",\"kind\":\"Sale\""),
                        "unknown-code",
                        "/kind"),
                refused("no kind", event("departures", "A1", "2025-12-01", ""), "required", "/kind"),
                refused("an animal without identifiers", animal(""), "required", "/identifiers"),
                refused("no identifier in the list", animal("\"identifiers\":[]"), "required", "/identifiers"),
                refused("identifiers as text", animal("\"identifiers\":\"A1\""), "not-an-array", "/identifiers"),
                refused("an identifier as text", animal("\"identifiers\":[\"A1\"]"), "not-an-object", "/identifiers/0"),
                refused(
                        "an identifier without scheme",
                        animal("\"identifiers\":[{\"id\":\"B\"}]"),
                        "required",
                        "/identifiers/0/scheme"),
                refused(
                        "a colon in an identifier",
                        animal("\"identifiers\":[{\"scheme\":\"s\",\"id\":\"a:b\"}]"),
                        "bad-identifier",
                        "/identifiers/0/id"),
                refused(
                        "eleven identifiers",
                        animal("\"identifiers\":[" + "{\"scheme\":\"s\",\"id\":\"x\"},".repeat(10)
                                + "{\"scheme\":\"s\",\"id\":\"y\"}]"),
                        "too-many",
                        "/identifiers"),
                refused(
                        "sex in capitals",
                        animal("\"identifiers\":[{\"scheme\":\"s\",\"id\":\"x\"}],\"sex\":\"FEMALE\""),
                        "unknown-code",
                        "/sex"),
                refused(
                        "born to come",
                        animal("\"identifiers\":[{\"scheme\":\"s\",\"id\":\"x\"}],\"birthDate\":\"2099-01-01\""),
                        "date-in-future",
                        "/birthDate"),
                new BadRequest(
                        "identifiers of two animals",
                        animal(
                                "\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"A1\"},{\"scheme\":\"example.eartag\",\"id\":\"A2\"}]"),
                        409,
                        "key-conflict",
                        "key-conflict",
                        "/"));
    }

    private static Stream<BadRequest> herds() {
        return Stream.of(
                new BadRequest(
                        "a herd that exists with another name",
                        post("/v1/herds", "{\"code\":\"{herd}\",\"name\":\"Other\",\"timeZone\":\"Europe/Dublin\"}"),
                        409,
                        "herd-exists",
                        "herd-exists",
                        "/code"),
                refused(
                        "a zone nobody knows",
                        post("/v1/herds", "{\"code\":\"x\",\"name\":\"x\",\"timeZone\":\"Mars/Base\"}"),
                        "unknown-time-zone",
                        "/timeZone"),
                refused(
                        "an offset as zone",
                        post("/v1/herds", "{\"code\":\"x\",\"name\":\"x\",\"timeZone\":\"+01:00\"}"),
                        "unknown-time-zone",
                        "/timeZone"),
                refused(
                        "a code with capitals",
                        post("/v1/herds", "{\"code\":\"Ash\",\"name\":\"x\",\"timeZone\":\"UTC\"}"),
                        "bad-code",
                        "/code"),
                refused(
                        "a code of 41",
                        post("/v1/herds", "{\"code\":\"" + "a".repeat(41) + "\",\"name\":\"x\",\"timeZone\":\"UTC\"}"),
                        "bad-code",
                        "/code"),
                refused(
                        "a herd without name",
                        post("/v1/herds", "{\"code\":\"x\",\"timeZone\":\"UTC\"}"),
                        "required",
                        "/name"));
    }

    private static Stream<BadRequest> bulk() {
        return Stream.of(
                of("a file of nothing", post(BULK, ""), 400, "empty-body", ""),
                of("a table of nothing", post(BULK, CSV, ""), 400, "empty-body", ""),
                of("a table of a blank line", post(BULK, CSV, " \n"), 400, "empty-body", ""),
                refused("row for rows", post(BULK, "{\"row\":[]}"), "not-rows", "/row"),
                refused("no member at all", post(BULK, "{}"), "not-rows", "/rows"),
                refused("rows that are none", post(BULK, "{\"rows\":{}}"), "not-rows", "/rows"),
                refused("a text for rows", post(BULK, "\"rows\""), "not-rows", "/"),
                refused("a member after rows", post(BULK, "{\"rows\":[],\"dryRun\":true}"), "not-rows", "/dryRun"),
                of(
                        "rows that break off",
                        post(BULK, "{\"rows\":[" + dayJson(",\"milkKg\":1")),
                        400,
                        "malformed-json",
                        "~stored"),
                of("text after the rows", post(BULK, "[] x"), 400, "malformed-json", "~stored"),
                of(
                        "a file in plain text",
                        post(BULK, "text/plain", HEADER),
                        415,
                        "unsupported-media-type",
                        "~text/csv"),
                of(
                        "a file without content type",
                        post(BULK, "[]").without("Content-Type"),
                        415,
                        "unsupported-media-type",
                        "~text/csv"),
                of(
                        "a file in gzip",
                        post(BULK, "[]").with("Content-Encoding", "gzip"),
                        415,
                        "unsupported-media-type",
                        "~Content-Encoding"),
                new BadRequest(
                        "an unknown column",
                        post(BULK, CSV, "animal_id,date,milk\nA1,2025-11-12,27\n"),
                        400,
                        "malformed-csv",
                        "unknown-column",
                        "/header"),
                new BadRequest(
                        "a column twice",
                        post(BULK, CSV, "animal_id,date,date\nA1,2025-11-12,2025-11-12\n"),
                        400,
                        "malformed-csv",
                        "repeated-column",
                        "/header"),
                of(
                        "quotes that do not end",
                        post(BULK, CSV, HEADER + GOOD_LINE + "example.eartag,\"A1,2025-11-13,27\n"),
                        400,
                        "malformed-csv",
                        "~row 1"),
                of(
                        "text after quotes",
                        post(BULK, CSV, HEADER + "example.eartag,\"A1\"x,2025-11-13,27\n"),
                        400,
                        "malformed-csv",
                        "~row 0"),
                of("a header that does not end", post(BULK, CSV, "a".repeat(20_000)), 400, "malformed-csv", "~header"),
                of("a line of 70,000", post(BULK, NDJSON, " ".repeat(70_000)), 413, "too-large", "~Line 1"),
                of(
                        "20,001 rows at once",
                        post(BULK + "?atomic=true", NDJSON, "{}\n".repeat(20_001)),
                        413,
                        "too-large",
                        "~20000"),
                of("200,001 rows", post(BULK, NDJSON, "{}\n".repeat(200_001)), 413, "too-large", "~200000"),
                of("a file of 33 MB", post(BULK, NDJSON, " \n".repeat(33 << 19)), 413, "too-large", "~33554432"),
                of("a file of 70 MB", post(BULK, NDJSON, " \n".repeat(70 << 19)), 413, "too-large", ""));
    }

    private static RawRequest change(String method, String path, String mediaType, String body) {
        return post(path, mediaType, body).as(method).with("If-Match", "*");
    }

    private static RawRequest patch(String path, String body) {
        return change("PATCH", path, "application/merge-patch+json", body);
    }

    private static Stream<BadRequest> changes() {
        String day = TEST_DAYS + "/{day}";
        String unknown = TEST_DAYS + "/0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55";
        return Stream.of(
                of("a change without If-Match", patch(day, "{}").without("If-Match"), 428, "precondition-required", ""),
                of("a withdrawal without If-Match", RawRequest.of("DELETE", day), 428, "precondition-required", ""),
                of(
                        "a replacement of another version",
                        change("PUT", day, JSON, dayJson(""))
                                .without("If-Match")
                                .with("If-Match", "\"9\""),
                        412,
                        "version-mismatch",
                        "@ETag"),
                of(
                        "a herd's change of another version",
                        patch(HERD, "{}").without("If-Match").with("If-Match", "\"9\""),
                        412,
                        "version-mismatch",
                        "@ETag"),
                new BadRequest(
                        "If-Match without quotes",
                        patch(day, "{}").without("If-Match").with("If-Match", "1"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@If-Match"),
                new BadRequest(
                        "If-Match that does not end",
                        patch(day, "{}").without("If-Match").with("If-Match", "\"1\", \"2"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@If-Match"),
                new BadRequest(
                        "If-None-Match of nonsense",
                        get(day).with("If-None-Match", "one"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@If-None-Match"),
                of(
                        "a patch as plain JSON",
                        change("PATCH", day, JSON, "{}"),
                        415,
                        "unsupported-media-type",
                        "~merge-patch"),
                of(
                        "a replacement as a patch",
                        change("PUT", day, "application/merge-patch+json", "{}"),
                        415,
                        "unsupported-media-type",
                        "~application/json"),
                of("a patch of nothing", patch(day, ""), 400, "empty-body", ""),
                of("a patch that breaks off", patch(day, "{\"milkKg\":"), 400, "malformed-json", "~line 1"),
                refused("a patch that is an array", patch(day, "[]"), "not-an-object", "/"),
                refused(
                        "a patch of an unknown member",
                        patch(day, "{\"fatPercent\":4}"),
                        "unknown-field",
                        "/fatPercent"),
                refused(
                        "clearing an unknown member",
                        patch(day, "{\"fatPercent\":null}"),
                        "unknown-field",
                        "/fatPercent"),
                refused("clearing the date", patch(day, "{\"date\":null}"), "required", "/date"),
                refused("clearing the animal", patch(day, "{\"animal\":null}"), "required", "/animal"),
                refused("patching in 1e999", patch(day, "{\"milkKg\":1e999}"), "not-finite", "/milkKg"),
                of("replacing with null", change("PUT", day, JSON, "null"), 400, "empty-body", "~null is none"),
                refused("replacing with nothing", change("PUT", day, JSON, "{}"), "required", "/date"),
                refused(
                        "an animal that loses its identifiers",
                        patch(ANIMAL, "{\"identifiers\":null}"),
                        "required",
                        "/identifiers"),
                new BadRequest(
                        "an animal with another one's identifier",
                        patch(ANIMAL, "{\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"A2\"}]}"),
                        409,
                        "key-conflict",
                        "key-conflict",
                        "/"),
                new BadRequest(
                        "moving a record to no animal",
                        patch(day, "{\"animal\":{\"id\":\"NONE\"}}"),
                        422,
                        "unknown-animal",
                        "unknown-animal",
                        "/animal"),
                refused("another code for a herd", patch(HERD, "{\"code\":\"other\"}"), "code-fixed", "/code"),
                refused("a herd without a zone", patch(HERD, "{\"timeZone\":null}"), "required", "/timeZone"),
                refused(
                        "a herd in a zone nobody knows",
                        patch(HERD, "{\"timeZone\":\"Mars/Base\"}"),
                        "unknown-time-zone",
                        "/timeZone"),
                of("patching no record", patch(unknown, "{}"), 404, "not-found", ""),
                of("replacing no record", change("PUT", unknown, JSON, dayJson("")), 404, "not-found", ""),
                of(
                        "withdrawing no record",
                        RawRequest.of("DELETE", unknown).with("If-Match", "*"),
                        404,
                        "not-found",
                        ""),
                of(
                        "withdrawing no id",
                        RawRequest.of("DELETE", TEST_DAYS + "/17").with("If-Match", "*"),
                        404,
                        "not-found",
                        ""),
                of(
                        "patching with a reading key",
                        patch(day, "{}").keyed("X-API-Key", "{reader}"),
                        403,
                        "scope-missing",
                        "~write"),
                of(
                        "patching with another herd's key",
                        patch(day, "{}").keyed("X-API-Key", "{stranger}"),
                        404,
                        "not-found",
                        ""),
                new BadRequest(
                        "an idempotency key too short",
                        day(",\"milkKg\":27.4").with("Idempotency-Key", "abc"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Idempotency-Key"),
                new BadRequest(
                        "an idempotency key with a blank",
                        day(",\"milkKg\":27.4").with("Idempotency-Key", "abcdefgh ijkl"),
                        400,
                        "bad-header",
                        "bad-header",
                        "@Idempotency-Key"));
    }

    private static Stream<BadRequest> versions() {
        return Stream.of(
                of(
                        "history of no record",
                        get(TEST_DAYS + "/0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55/history"),
                        404,
                        "not-found",
                        ""),
                of("history of no animal", get(HERD + "/animals/x:y/history"), 404, "not-found", ""),
                of(
                        "history with another herd's key",
                        get(TEST_DAYS + "/{day}/history").keyed("X-API-Key", "{stranger}"),
                        404,
                        "not-found",
                        ""),
                of(
                        "a herd's history with another herd's key",
                        get(HERD + "/history").keyed("X-API-Key", "{stranger}"),
                        404,
                        "not-found",
                        ""),
                of(
                        "changes with another herd's key",
                        get(HERD + "/changes").keyed("X-API-Key", "{stranger}"),
                        404,
                        "not-found",
                        ""),
                of(
                        "changes with a writing key",
                        get(HERD + "/changes").keyed("X-API-Key", "{writer}"),
                        403,
                        "scope-missing",
                        "~read"),
                parameter("changes after -1", get(HERD + "/changes?after=-1"), "bad-parameter", "after"),
                parameter("changes after 1.5", get(HERD + "/changes?after=1.5"), "bad-parameter", "after"),
                parameter("changes after the last", get(HERD + "/changes?after=999999"), "bad-parameter", "after"),
                parameter(
                        "changes after too much",
                        get(HERD + "/changes?after=9999999999999999999"),
                        "bad-parameter",
                        "after"),
                parameter("no changes at all", get(HERD + "/changes?limit=0"), "bad-parameter", "limit"),
                parameter(
                        "knownAt without offset",
                        get(HERD + "/summary?knownAt=2025-12-01T20:11:04"),
                        "bad-parameter",
                        "knownAt"),
                parameter("knownAt as a date", get(TEST_DAYS + "?knownAt=2025-12-01"), "bad-parameter", "knownAt"),
                parameter(
                        "knownAt on 30 February",
                        get(TEST_DAYS + "?knownAt=2025-02-30T00:00:00Z"),
                        "bad-parameter",
                        "knownAt"),
                parameter(
                        "knownAt in the future",
                        get(HERD + "/animals?knownAt=2099-01-01T00:00:00Z"),
                        "bad-parameter",
                        "knownAt"),
                parameter(
                        "knownAt of a record without offset",
                        get(TEST_DAYS + "/{day}?knownAt=now"),
                        "bad-parameter",
                        "knownAt"),
                of("a herd before it was known", get(HERD + "?knownAt=2000-01-01T00:00:00Z"), 404, "not-found", ""),
                of(
                        "a figure before the herd was known",
                        get(HERD + "/summary?knownAt=2000-01-01T00:00:00Z"),
                        404,
                        "not-found",
                        ""),
                parameter("parity without animal", get(TEST_DAYS + "?parity=1"), "bad-parameter", "parity"),
                parameter(
                        "parity 0 as filter",
                        get(TEST_DAYS + "?animal=example.eartag:A1&parity=0"),
                        "bad-parameter",
                        "parity"),
                parameter(
                        "includeWithdrawn=yes",
                        get(TEST_DAYS + "?includeWithdrawn=yes"),
                        "bad-parameter",
                        "includeWithdrawn"),
                parameter("count=1", get(HERD + "/animals?count=1"), "bad-parameter", "count"),
                parameter(
                        "a cursor in two parts",
                        get(TEST_DAYS + "?cursor=" + base64("2025-01-01 x") + "." + base64("signature")),
                        "bad-cursor",
                        "cursor"),
                parameter("a cursor in three parts", get(TEST_DAYS + "?cursor=a.b.c"), "bad-cursor", "cursor"));
    }
}
