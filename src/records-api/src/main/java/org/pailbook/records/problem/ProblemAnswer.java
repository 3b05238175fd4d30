package org.pailbook.records.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import java.util.List;
import java.util.UUID;

/** Writes a problem body where no resource and no exception mapper is reached. */
public final class ProblemAnswer {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static final int ID_LENGTH = 12;

    private ProblemAnswer() {}

    /**
     * The body as bytes.
     *
     * @param instance path it is about, or null where none could be read
     */
    static byte[] body(ProblemCode code, String detail, String instance, String requestId) {
        try {
            return MAPPER.writeValueAsBytes(ProblemBody.of(code, detail, List.of(), instance, requestId));
        } catch (JsonProcessingException cannotBe) {
            throw new IllegalStateException("a problem body of plain text could not be written", cannotBe);
        }
    }

    /** An id for what never became a request with one of its own; it stands nowhere but in the answer. */
    static String newRequestId() {
        return UUID.randomUUID().toString().replace("-", "").substring(0, ID_LENGTH);
    }

    /** Sends a problem on a route that is no resource. */
    public static void send(RoutingContext routing, Problem problem) {
        HttpServerRequest request = routing.request();
        problem.headers().forEach(request.response()::putHeader);
        send(
                request,
                problem.code(),
                body(problem.code(), problem.getMessage(), ShownPath.of(request), RequestId.of(routing)));
    }

    /** Sends the answer; does nothing if another one has begun. */
    static void send(HttpServerRequest request, ProblemCode code, byte[] body) {
        HttpServerResponse response = request.response();
        if (response.ended() || response.headWritten()) {
            return;
        }
        SafetyHeaders.each(response::putHeader);
        response.setStatusCode(code.status())
                .putHeader("Content-Type", ProblemBody.MEDIA_TYPE)
                .putHeader("Content-Language", "en")
                .end(Buffer.buffer(body));
    }
}
