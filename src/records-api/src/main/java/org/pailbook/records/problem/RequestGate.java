package org.pailbook.records.problem;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import java.util.Set;
import org.jboss.logging.Logger;

/**
 * The first route of all: methods no route takes, bodies declared over the limit, and every failure of the routing itself are
 * answered here with a problem body, where the layers around would send an empty one.
 *
 * <p>What cannot be read as a request at all is answered by {@link UnreadableRequests}, what a resource or the REST layer
 * refuses by {@link ProblemMappers}.
 */
@ApplicationScoped
public class RequestGate {
    private static final Logger LOG = Logger.getLogger(RequestGate.class);

    /** Methods that some route of the service may take; in the order in which Allow lists them. */
    private static final List<HttpMethod> METHODS = List.of(
            HttpMethod.GET,
            HttpMethod.HEAD,
            HttpMethod.POST,
            HttpMethod.PUT,
            HttpMethod.PATCH,
            HttpMethod.DELETE,
            HttpMethod.OPTIONS);

    private static final String ALLOW = "GET, HEAD, POST, PUT, PATCH, DELETE, OPTIONS";
    private static final Set<HttpMethod> KNOWN_BUT_REFUSED = Set.of(HttpMethod.TRACE, HttpMethod.CONNECT);

    /** Most bytes of any body, 32 MiB; single records may have less, and a body without a declared length is counted as it is read. */
    private static final long MOST_BODY_BYTES = 32L * 1024 * 1024;

    void open(@Observes Router router) {
        // Read once, when the server socket is made, which is after this; there is no other way to switch an extension
        // on.
        System.setProperty(ChannelInitializerExtension.EXTENSIONS_SYSTEM_PROPERTY, "serviceload");
        router.route().order(Integer.MIN_VALUE).handler(this::judge).failureHandler(this::answerFailure);
        router.errorHandler(400, this::answerFailure);
        router.errorHandler(404, this::answerFailure);
        router.errorHandler(405, this::answerFailure);
        router.errorHandler(500, this::answerFailure);
    }

    private void judge(RoutingContext routing) {
        HttpServerRequest request = routing.request();
        HttpMethod method = request.method();
        // last of all: an answer that says its own would else have both, and a browser keeps to the stricter
        routing.addHeadersEndHandler(written -> SafetyHeaders.addMissing(routing.response()));
        if (UnreadBody.isExpectedOf(request)) {
            UnreadBody.dropAfterAnswer(routing);
        }
        if (!METHODS.contains(method)) {
            routing.response().putHeader("Allow", ALLOW);
            boolean known = KNOWN_BUT_REFUSED.contains(method);
            ProblemCode code = known ? ProblemCode.METHOD_NOT_ALLOWED : ProblemCode.NOT_IMPLEMENTED;
            answer(routing, code, "The Allow header lists the methods this service knows.");
        } else if (declaredBytes(request) > MOST_BODY_BYTES) {
            answer(
                    routing,
                    ProblemCode.TOO_LARGE,
                    "A body may have " + MOST_BODY_BYTES + " bytes; send a large table in parts.");
        } else {
            routing.next();
        }
    }

    private static long declaredBytes(HttpServerRequest request) {
        String length = request.getHeader("Content-Length");
        return length == null
                ? 0
                : Long.parseLong(length.trim()); // a text or a doubled length does not get through the decoder
    }

    private void answerFailure(RoutingContext routing) {
        HttpServerRequest request = routing.request();
        int status = routing.statusCode() == -1 ? (routing.failure() == null ? 404 : 500) : routing.statusCode();
        if (HttpMethod.OPTIONS.equals(request.method()) && request.uri().equals("*")) {
            routing.response().setStatusCode(204).putHeader("Allow", ALLOW).end();
        } else if (HttpMethod.CONNECT.equals(request.method())) {
            judge(routing); // its address is no path, so no route was asked
        } else if (status >= 500) {
            LOG.errorf(
                    routing.failure(),
                    "%s: %s %s failed",
                    RequestId.of(routing),
                    request.method(),
                    ShownPath.of(request));
            answer(routing, ProblemCode.INTERNAL, "The error is logged under the request id.");
        } else if (status == 400) {
            answer(
                    routing,
                    ProblemCode.MALFORMED_REQUEST,
                    "The Host header is not a host name with or without a port.");
        } else {
            ProblemCode code = ProblemCode.ofStatus(status);
            answer(routing, code, code.title() + ".");
        }
    }

    private static void answer(RoutingContext routing, ProblemCode code, String detail) {
        HttpServerRequest request = routing.request();
        ProblemAnswer.send(
                request, code, ProblemAnswer.body(code, detail, ShownPath.of(request), RequestId.of(routing)));
    }
}
