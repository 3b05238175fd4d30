package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the service answered.
 *
 * @param headers names in small letters
 */
record Answer(int status, Map<String, List<String>> headers, String text) {
    private static final ObjectMapper JSON = new ObjectMapper();

    Optional<String> header(String name) {
        return headers.getOrDefault(name.toLowerCase(java.util.Locale.ROOT), List.of()).stream()
                .findFirst();
    }

    JsonNode json() {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException broken) {
            throw new AssertionError("not JSON, status " + status + ": " + text, broken);
        }
    }

    /** The member at that JSON pointer; a missing node if it is not there. */
    JsonNode at(String pointer) {
        return json().at(pointer);
    }

    /** Text of the member; null if it is not there. */
    String textAt(String pointer) {
        JsonNode node = at(pointer);
        return node.isMissingNode() ? null : node.asText();
    }

    double numberAt(String pointer) {
        JsonNode node = at(pointer);
        assertThat(node.isNumber()).as(pointer + " of " + text).isTrue();
        return node.doubleValue();
    }

    int countAt(String pointer) {
        JsonNode node = at(pointer);
        assertThat(node.isInt()).as(pointer + " of " + text).isTrue();
        return node.intValue();
    }

    Answer expecting(int expectedStatus) {
        assertThat(status).as(text).isEqualTo(expectedStatus);
        return this;
    }

    /** Codes of the findings of a posted record, in order. */
    List<String> findingCodes() {
        return at("/findings").findValuesAsText("code");
    }
}
