package org.pailbook.records.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * The body of every answer with a status of 400 or more (RFC 9457).
 *
 * @param errors at most {@link #MOST_ERRORS}; {@code errorsTruncated} says when there were more
 */
@Schema(name = "Problem", description = "RFC 9457 problem; code is stable, texts are not")
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record ProblemBody(
        @Schema(examples = "/problems/validation-failed", required = true)
        String type,

        @Schema(required = true) String title,
        @Schema(required = true) int status,

        @Schema(examples = "validation-failed", required = true)
        String code,

        String detail,
        @Schema(description = "Path of the request") String instance,
        @Schema(description = "Also in the service's log") String requestId,
        List<Fault> errors,
        Boolean errorsTruncated) {

    public static final String MEDIA_TYPE = "application/problem+json";
    private static final int MOST_ERRORS = 100;

    public static ProblemBody of(
            ProblemCode code, String detail, List<Fault> faults, String instance, String requestId) {
        boolean truncated = faults.size() > MOST_ERRORS;
        return new ProblemBody(
                "/problems/" + code.code(),
                code.title(),
                code.status(),
                code.code(),
                detail,
                instance,
                requestId,
                truncated ? faults.subList(0, MOST_ERRORS) : faults,
                truncated ? Boolean.TRUE : null);
    }
}
