package org.pailbook.records.problem;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the HTTP layer by itself refuses with an empty body, sent byte for byte to the packaged service. Not a {@code @QuarkusTest}: there
 * Netty does not see {@link UnreadableRequests}.
 */
@Tag("contract")
class PackagedRefusalIT {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String LF = "\r\n";
    private static final String HOST = "Host: localhost" + LF;
    private static final String KEY = "X-API-Key: " + PackagedService.KEY + LF;

    private static PackagedService service;

    @BeforeAll
    static void start(@TempDir Path data) throws IOException {
        service = PackagedService.start(Path.of("target", "quarkus-app", "quarkus-run.jar"), data);
    }

    @AfterAll
    static void stop() {
        if (service != null) {
            service.close();
        }
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "GET, /v1/herds/%zz, 400, bad-path",
        "GET, /v1/herds/%FF, 400, bad-path",
        "GET, /v1/herds/a%, 400, bad-path",
        "GET, /v1/herds/%00, 400, bad-path",
        "GET, /v1/herds/a|b, 400, bad-path",
        "GET, /v1/herds/a#b, 400, bad-path",
        "GET, v1/herds, 400, bad-path",
        "GET, *, 400, bad-path",
        "GET, /v1/herds?limit=%zz, 400, bad-parameter",
        "GET, //, 404, no-such-route",
        "GET, //v1/herds, 404, no-such-route",
        "GET, /nowhere, 404, no-such-route",
        "TRACE, /v1/herds, 405, method-not-allowed",
        "CONNECT, localhost:443, 405, method-not-allowed",
        "BREW, /v1/herds, 501, method-not-implemented",
    })
    void anAddressOrMethodNobodyTakesIsRefusedInWords(String method, String target, int status, String code)
            throws IOException {
        assertRefused(method + " " + target + " HTTP/1.1" + LF + HOST + "Connection: close" + LF + LF, status, code);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "GARBAGE",
                "GET /v1/herds",
                "GET /v1/herds HTTP/9.9",
                "GET /v1/herds TEA/1.1",
                "GET /v1/herds a HTTP/1.1",
            })
    void aLineThatIsNoRequestLineIsRefusedInWords(String line) throws IOException {
        assertRefused(line + LF + HOST + LF, 400, "malformed-request");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "no colon here",
                "bad name: x",
                "Host: second",
                "Content-Length: x",
                "Content-Length: -1",
                "Transfer-Encoding: gzip",
                "Transfer-Encoding: gzip, chunked",
            })
    void aHeaderThatIsNoneIsRefusedInWords(String header) throws IOException {
        assertRefused("POST /v1/herds HTTP/1.1" + LF + HOST + header + LF + LF, 400, "malformed-request");
    }

    @Test
    void aRequestWithoutHostIsRefusedInWords() throws IOException {
        assertRefused("GET /v1/herds HTTP/1.1" + LF + LF, 400, "malformed-request");
    }

    @Test
    void anAddressOverTheLimitIsRefusedInWords() throws IOException {
        String target = "/v1/herds?q=" + "x".repeat(100_000);
        assertRefused("GET " + target + " HTTP/1.1" + LF + HOST + LF, 414, "uri-too-long");
    }

    @Test
    void headersOverTheLimitAreRefusedInWords() throws IOException {
        String header = "X-Long: " + "x".repeat(100_000) + LF;
        assertRefused("GET /v1/herds HTTP/1.1" + LF + HOST + header + LF, 431, "headers-too-large");
    }

    @Test
    void aBodyDeclaredOverTheLimitIsRefusedBeforeItIsSent() throws IOException {
        String head = "POST /v1/herds HTTP/1.1" + LF + HOST + "Content-Length: 99999999999" + LF + LF;
        assertRefused(head, 413, "too-large");
    }

    @Test
    void aBodyThatGrowsOverTheLimitIsRefusedWithoutWaitingForItsEnd() throws IOException {
        String head = "POST /v1/herds HTTP/1.1" + LF + HOST + KEY + "Content-Type: application/json" + LF
                + "Transfer-Encoding: chunked" + LF + LF;
        String chunk = "10000" + LF + " ".repeat(0x10000) + LF;
        assertRefused(head + chunk.repeat(40), 413, "too-large");
    }

    @Test
    void chunksThatMakeNoSenseAreRefusedInWords() throws IOException {
        String head = "POST /v1/herds HTTP/1.1" + LF + HOST + "Transfer-Encoding: chunked" + LF + LF;
        assertRefused(head + "zz" + LF + "abc" + LF + "0" + LF + LF, 400, "malformed-request");
    }

    @Test
    void afterAGoodRequestOnTheSameConnectionABrokenOneIsAnsweredInItsTurn() throws IOException {
        String good = "OPTIONS * HTTP/1.1" + LF + HOST + LF;
        String answers = service.exchange(good + "GET /v1/herds/%zz HTTP/1.1" + LF + HOST + LF);
        assertThat(answers).startsWith("HTTP/1.1 204").contains("HTTP/1.1 400").contains("\"bad-path\"");
    }

    @Test
    void aBodyNobodyReadLeavesTheConnectionToTheNextRequest() throws IOException {
        String unread = "POST /v1/herds HTTP/1.1" + LF + HOST + "Content-Length: 3000" + LF + LF + " ".repeat(3000);
        String next = "GET /v1/me HTTP/1.1" + LF + HOST + KEY + "Connection: close" + LF + LF;
        assertThat(service.exchange(unread + next)).startsWith("HTTP/1.1 401").contains("HTTP/1.1 200");
    }

    private static void assertRefused(String request, int status, String code) throws IOException {
        String answer = service.exchange(request);
        assertThat(answer).as("answer").contains(LF + LF);
        String head = answer.substring(0, answer.indexOf(LF + LF));
        JsonNode problem = MAPPER.readTree(answer.substring(answer.indexOf(LF + LF) + 4));
        assertThat(head.substring(head.indexOf(' ') + 1)).startsWith(status + " ");
        assertThat(head).containsIgnoringCase("content-type: application/problem+json");
        assertThat(problem.path("status").asInt()).isEqualTo(status);
        assertThat(problem.path("code").asText()).isEqualTo(code);
        assertThat(problem.path("type").asText()).isEqualTo("/problems/" + code);
        for (String member : new String[] {"title", "detail", "requestId"}) {
            assertThat(problem.path(member).asText()).as(member).isNotBlank();
        }
    }
}
