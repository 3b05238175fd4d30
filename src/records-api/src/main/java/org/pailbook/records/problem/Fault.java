package org.pailbook.records.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * One thing wrong with a request, and its place: exactly one of pointer, parameter and header.
 *
 * @param pointer place in the body, RFC 6901
 * @param parameter name of a query or path parameter
 * @param header name of a header
 * @param code what is wrong, stable
 * @param message the same in words
 * @param value what was seen, shortened; absent where there was nothing or where it may be a secret
 */
@Schema(name = "Fault", description = "One thing wrong with the request and its place")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Fault(
        @Schema(examples = "/milkKg", description = "Place in the body, RFC 6901")
        String pointer,

        @Schema(description = "Name of the query or path parameter")
        String parameter,

        @Schema(description = "Name of the header") String header,
        @Schema(examples = "not-a-number", required = true) String code,
        @Schema(required = true) String message,
        @Schema(description = "What was seen, shortened") String value) {

    private static final int LONGEST_SHOWN = 80;

    public static Fault inBody(String pointer, String code, String message) {
        return new Fault(pointer, null, null, code, message, null);
    }

    public static Fault inParameter(String name, String code, String message) {
        return new Fault(null, name, null, code, message, null);
    }

    public static Fault inHeader(String name, String code, String message) {
        return new Fault(null, null, name, code, message, null);
    }

    public Fault withValue(String seen) {
        return new Fault(pointer, parameter, header, code, message, shorten(seen));
    }

    /** What was seen, cut to a length that cannot flood an answer or a log. */
    public static String shorten(String seen) {
        return seen.length() <= LONGEST_SHOWN ? seen : seen.substring(0, LONGEST_SHOWN) + "…";
    }
}
