package org.pailbook.records.problem;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.handler.codec.http.TooLongHttpHeaderException;
import io.netty.handler.codec.http.TooLongHttpLineException;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.impl.Http1xServerConnection;
import io.vertx.core.net.impl.VertxHandler;

/**
 * Answers what cannot be read as an HTTP request: an address or headers over the limit, a broken request line or address, a
 * body whose chunks make no sense. The HTTP server refuses these before any route, with an empty body, and has no setting
 * for it.
 *
 * <p>Netty makes one for each server socket ({@code META-INF/services}), once {@link RequestGate} has switched extensions on.
 * Connections that do not speak HTTP/1 are left alone. Where Netty does not see the classes of the application, which is so
 * in a {@code @QuarkusTest}, this does nothing and the server's empty answers remain; the packaged service is what counts.
 */
public final class UnreadableRequests extends ChannelInitializerExtension {
    /** Name that the HTTP server gives its own handler of a connection. */
    private static final String SERVER_HANDLER = "handler";

    @Override
    public void postInitializeServerChildChannel(Channel channel) {
        channel.pipeline().addFirst(new AtFirstBytes());
    }

    /** The server sets a connection up after us, with TLS even after the handshake; so it is looked for when bytes arrive. */
    private static final class AtFirstBytes extends ChannelInboundHandlerAdapter {
        @Override
        public void channelRead(ChannelHandlerContext context, Object bytes) {
            if (context.pipeline().get(SERVER_HANDLER) instanceof VertxHandler<?> server) {
                if (server.getConnection() instanceof Http1xServerConnection connection) {
                    connection.invalidRequestHandler(UnreadableRequests::answer);
                    context.pipeline().addBefore(SERVER_HANDLER, "unreadable", new RequestReading());
                }
                context.pipeline().remove(this);
            }
            context.fireChannelRead(bytes);
        }
    }

    /** The server closes the connection after this answer. */
    private static void answer(HttpServerRequest request) {
        Throwable cause = request.decoderResult().cause();
        if (cause instanceof RequestReading.Flawed flawed) {
            send(request, flawed.flaw(), ShownPath.of(request));
        } else if (cause instanceof TooLongHttpLineException) {
            send(request, ProblemCode.URI_TOO_LONG, "The address is longer than this service reads.");
        } else if (cause instanceof TooLongHttpHeaderException) {
            send(request, ProblemCode.HEADERS_TOO_LARGE, "The headers together are longer than this service reads.");
        } else {
            send(request, ProblemCode.MALFORMED_REQUEST, "The request line or a header is not HTTP/1.1.");
        }
    }

    private static void send(HttpServerRequest request, ProblemCode code, String detail) {
        send(request, new RequestTarget.Flaw(code, detail), null);
    }

    private static void send(HttpServerRequest request, RequestTarget.Flaw flaw, String instance) {
        request.response().putHeader("Connection", "close");
        ProblemAnswer.send(
                request,
                flaw.code(),
                ProblemAnswer.body(flaw.code(), flaw.detail(), instance, ProblemAnswer.newRequestId()));
    }
}
