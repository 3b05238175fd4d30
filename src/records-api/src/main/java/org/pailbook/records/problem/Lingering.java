package org.pailbook.records.problem;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;

/**
 * Closes a connection only some time after a refusal. Closed at once, with bytes of the body still on their way, the
 * connection is reset and the client may never read the answer.
 *
 * @see "RFC 9112, section 9.6, on closing in stages; number from memory"
 */
final class Lingering {
    private Lingering() {}

    /** Says in the answer that the connection closes, then reads and drops what still arrives until the end or the time is up. */
    static void closeAfterAnswer(RoutingContext routing, long millis) {
        HttpServerRequest request = routing.request();
        request.response().putHeader("Connection", "close");
        routing.addEndHandler(ended -> {
            if (request.isEnded()) {
                request.connection().close();
                return;
            }
            long timer = routing.vertx()
                    .setTimer(millis, late -> request.connection().close());
            request.exceptionHandler(gone -> routing.vertx().cancelTimer(timer));
            request.endHandler(read -> {
                routing.vertx().cancelTimer(timer);
                request.connection().close();
            });
            request.handler(dropped -> {});
            request.resume();
        });
    }
}
