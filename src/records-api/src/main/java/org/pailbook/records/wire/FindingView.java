package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.problem.Fault;

/**
 * A finding on one posted record.
 *
 * @param grade error: not stored; warning: stored and shown; info
 * @param code what was found, stable
 * @param pointer place in the body, RFC 6901
 * @param column column of the table, for CSV
 * @param value what was seen
 * @param message the same in words
 * @param expected what would have been accepted or usual
 */
@Schema(name = "Finding", description = "What was found on a posted record; error means it was not stored")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FindingView(
        @Schema(required = true) Grade grade,
        @Schema(examples = "fat-unusual", required = true) String code,
        @Schema(examples = "/fatPct") String pointer,
        String column,
        String value,
        @Schema(required = true) String message,
        String expected) {

    public static FindingView error(String code, String pointer, String message) {
        return new FindingView(Grade.ERROR, code, pointer, null, null, message, null);
    }

    public static FindingView warning(String code, String pointer, String message) {
        return new FindingView(Grade.WARNING, code, pointer, null, null, message, null);
    }

    public static FindingView info(String code, String pointer, String message) {
        return new FindingView(Grade.INFO, code, pointer, null, null, message, null);
    }

    public FindingView seen(String what) {
        return new FindingView(grade, code, pointer, column, Fault.shorten(what), message, expected);
    }

    public FindingView expecting(String what) {
        return new FindingView(grade, code, pointer, column, value, message, what);
    }

    public FindingView inColumn(String name) {
        return new FindingView(grade, code, pointer, name, value, message, expected);
    }

    @JsonIgnore
    public boolean isError() {
        return grade == Grade.ERROR;
    }

    public Fault asFault() {
        String words = expected == null ? message : message + " (expected " + expected + ")";
        Fault fault = Fault.inBody(pointer, code, words);
        return value == null ? fault : fault.withValue(value);
    }
}
