package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.records.problem.PackagedService;

/** A herd of its own for a browser test, written and read over the API: what the pages did is checked there, not in the pages. */
record WrittenHerd(String address, String code) {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final ObjectMapper JSON = new ObjectMapper();

    static WrittenHerd make(PackagedService service, String code) throws IOException {
        WrittenHerd herd = new WrittenHerd(service.address(), code);
        herd.send(
                "POST",
                "/v1/herds",
                "application/json",
                "{\"code\":\"" + code + "\",\"name\":\"Herd " + code + "\",\"timeZone\":\"Europe/Dublin\"}");
        return herd;
    }

    /** Cows calved on 1 September 2025, each with one test day. */
    WrittenHerd withCows(String... tags) throws IOException {
        StringBuilder animals = new StringBuilder("animal_scheme,animal_id,name,breed\n");
        StringBuilder calvings = new StringBuilder("animal_scheme,animal_id,date,parity\n");
        StringBuilder tests = new StringBuilder("animal_scheme,animal_id,date,milk_kg\n");
        for (String tag : tags) {
            animals.append("example.eartag,")
                    .append(tag)
                    .append(",Cow ")
                    .append(tag)
                    .append(",HOL\n");
            calvings.append("example.eartag,").append(tag).append(",2025-09-01,2\n");
            tests.append("example.eartag,").append(tag).append(",2025-10-15,30\n");
        }
        bulk("animals", animals.toString());
        bulk("calvings", calvings.toString());
        bulk("test-days", tests.toString());
        return this;
    }

    JsonNode bulk(String kind, String csv) throws IOException {
        return send("POST", "/v1/herds/" + code + "/" + kind + "/bulk", "text/csv", csv);
    }

    JsonNode post(String kind, String json) throws IOException {
        return send("POST", "/v1/herds/" + code + "/" + kind, "application/json", json);
    }

    /** The records of a kind on a day, each with its version. */
    List<JsonNode> records(String kind, String day) throws IOException {
        List<JsonNode> records = new ArrayList<>();
        send("GET", "/v1/herds/" + code + "/" + kind + "?from=" + day + "&to=" + day, null, null)
                .path("items")
                .forEach(records::add);
        return records;
    }

    String page(String rest) {
        return "/pages/herds/" + code + rest;
    }

    private JsonNode send(String method, String path, String mediaType, String body) throws IOException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + path))
                .header("X-API-Key", PackagedService.KEY)
                .method(
                        method,
                        body == null ? HttpRequest.BodyPublishers.noBody() : HttpRequest.BodyPublishers.ofString(body));
        if (mediaType != null) {
            request.header("Content-Type", mediaType);
        }
        try {
            HttpResponse<String> answer = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(answer.body()).isBetween(200, 299);
            return JSON.readTree(answer.body());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IOException(stopped);
        }
    }
}
