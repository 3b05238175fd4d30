package org.pailbook.records.problem;

import io.vertx.core.Context;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;

/**
 * What happens to the rest of a body when the answer was given before all of it was read.
 *
 * <p>It is read and dropped for a short while, so that a client that is still sending can read the answer and the connection
 * serves the next request. If it does not end by then the connection is closed. Closed at once, with bytes still on their way,
 * the connection would be reset and the client might never see why.
 *
 * @see "RFC 9112, section 9.6, on closing in stages; number from memory"
 */
final class UnreadBody {
    private static final long LONGEST_MILLIS = 2_000;

    private UnreadBody() {}

    static boolean isExpectedOf(HttpServerRequest request) {
        return request.getHeader("Content-Length") != null || request.getHeader("Transfer-Encoding") != null;
    }

    /** Sees to the rest of this request's body once its answer has been sent; call it on the event loop. */
    static void dropAfterAnswer(RoutingContext routing) {
        Context eventLoop = routing.vertx().getOrCreateContext();
        HttpServerResponse response = routing.response();
        routing.addHeadersEndHandler(head -> {
            if (response.getStatusCode() == ProblemCode.TOO_LARGE.status()) {
                response.putHeader("Connection", "close");
            }
        });
        // The answer is given on another thread than the one on which the body arrives.
        routing.addEndHandler(answered -> eventLoop.runOnContext(now -> drop(routing)));
    }

    private static void drop(RoutingContext routing) {
        HttpServerRequest request = routing.request();
        boolean closes = routing.response().getStatusCode() == ProblemCode.TOO_LARGE.status();
        if (request.isEnded()) {
            if (closes) {
                request.connection().close();
            }
            return;
        }
        long timer = routing.vertx().setTimer(LONGEST_MILLIS, late -> {
            if (!request.isEnded()) { // else the connection is at another request by now
                request.connection().close();
            }
        });
        request.exceptionHandler(gone -> routing.vertx().cancelTimer(timer));
        request.endHandler(read -> {
            routing.vertx().cancelTimer(timer);
            if (closes) {
                request.connection().close();
            }
        });
        request.handler(dropped -> {});
        request.resume();
    }
}
