package org.pailbook.records.wire;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * Reads JSON without forgiving anything: UTF-8 only, no doubled members, no text after the value, bounded depth and length,
 * numbers kept as written.
 */
public final class StrictJson {
    private static final int DEEPEST = 64;
    private static final int LONGEST_TEXT = 64 * 1024;
    private static final int LONGEST_NUMBER = 40;

    /** Tokens of a body that is held in memory as a whole: 32 MiB of empty objects would fill the memory. Ours. */
    private static final long MOST_TOKENS_AT_ONCE = 1_000_000;

    /** For bodies read one row after the other, which may be of any number. */
    private static final JsonFactory FACTORY = factory(Long.MAX_VALUE);

    private static final JsonFactory FACTORY_OF_WHOLE = factory(MOST_TOKENS_AT_ONCE);

    /** Reads trees; the one mapper for everything posted. */
    static final ObjectMapper MAPPER = JsonMapper.builder(FACTORY)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private StrictJson() {}

    private static JsonFactory factory(long mostTokens) {
        return JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(DEEPEST)
                        .maxStringLength(LONGEST_TEXT)
                        .maxNumberLength(LONGEST_NUMBER)
                        .maxNameLength(1000)
                        .maxTokenCount(mostTokens)
                        .build())
                .build();
    }

    /** The one object a body holds. */
    public static ObjectNode object(InputStream body) {
        try (JsonParser parser = parser(FACTORY_OF_WHOLE, body)) {
            return onlyObject(parser);
        } catch (IOException unreadable) {
            throw unreadable(unreadable);
        }
    }

    /** The one object a text holds. */
    public static ObjectNode object(String text) {
        try (JsonParser parser = FACTORY_OF_WHOLE.createParser(text)) {
            parser.setCodec(MAPPER);
            return onlyObject(parser);
        } catch (IOException unreadable) {
            throw unreadable(unreadable);
        }
    }

    private static ObjectNode onlyObject(JsonParser parser) throws IOException {
        if (parser.nextToken() == null) {
            throw new Problem(ProblemCode.EMPTY_BODY, "Send one JSON object.");
        }
        boolean nothing = parser.currentToken() == JsonToken.VALUE_NULL;
        JsonNode node = value(parser);
        if (parser.nextToken() != null) {
            throw new Problem(
                    ProblemCode.MALFORMED_JSON,
                    "There is more text after the JSON value, " + place(parser.currentLocation()));
        }
        if (nothing) {
            throw new Problem(ProblemCode.EMPTY_BODY, "Send one JSON object; null is none.");
        }
        return requireObject(node, "");
    }

    /** An object this service itself wrote and kept. */
    public static ObjectNode kept(String text) {
        try {
            return (ObjectNode) MAPPER.readTree(text);
        } catch (JsonProcessingException damaged) {
            throw new IllegalStateException("kept content is not JSON", damaged);
        }
    }

    /**
     * The value at whose first token the parser stands. Text after it is left to the caller: in an array more values follow.
     */
    public static JsonNode value(JsonParser parser) throws IOException {
        try {
            return MAPPER.readTree(parser);
        } catch (ArithmeticException | NumberFormatException exponent) {
            // a decimal's exponent is an int; the parser lets longer ones through to the conversion
            throw new Problem(
                    ProblemCode.MALFORMED_JSON,
                    "A number has an exponent that cannot be, " + place(parser.currentLocation()));
        }
    }

    /** A parser over a body, strict about bytes; for reading many rows one after the other. */
    public static JsonParser parser(InputStream body) throws IOException {
        return parser(FACTORY, body);
    }

    private static JsonParser parser(JsonFactory factory, InputStream body) throws IOException {
        JsonParser parser = factory.createParser(utf8(body));
        parser.setCodec(MAPPER);
        return parser;
    }

    /** Text of a body; bytes that are no UTF-8 end in {@link CharacterCodingException}. */
    public static Reader utf8(InputStream body) {
        return new InputStreamReader(
                body,
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    /** The row or body as an object, or the problem that it is none. */
    public static ObjectNode requireObject(JsonNode node, String pointer) {
        if (node instanceof ObjectNode object) {
            return object;
        }
        throw Problem.validation(List.of(
                Fault.inBody(pointer, "not-an-object", "must be a JSON object").withValue(String.valueOf(node))));
    }

    /** The problem for a body that could not be read: told in our words, since the parser's name its classes. */
    public static Problem unreadable(IOException failure) {
        if (failure instanceof CharacterCodingException) {
            return new Problem(ProblemCode.NOT_UTF8, "The body has bytes that are not UTF-8.");
        }
        if (failure instanceof JsonProcessingException json) {
            String message = String.valueOf(json.getOriginalMessage());
            if (message.startsWith("Token count")) {
                return new Problem(
                        ProblemCode.TOO_LARGE,
                        "The body has more than " + MOST_TOKENS_AT_ONCE
                                + " names, values and brackets; send it in parts.");
            }
            if (message.contains("exceeds the maximum") || message.contains("maximum allowed")) {
                return new Problem(
                        ProblemCode.TOO_LARGE,
                        "A text, number or nesting is beyond the limit, " + place(json.getLocation()));
            }
            String what = message.startsWith("Duplicate field")
                    ? "A member stands twice in one object"
                    : "The JSON breaks off or is not well-formed";
            return new Problem(ProblemCode.MALFORMED_JSON, what + ", " + place(json.getLocation()));
        }
        if (failure.getCause() instanceof Problem problem) {
            return problem;
        }
        return new Problem(ProblemCode.MALFORMED_REQUEST, "The body broke off before its end.");
    }

    private static String place(JsonLocation location) {
        return location == null
                ? "place unknown."
                : "line " + location.getLineNr() + ", column " + location.getColumnNr() + ".";
    }
}
