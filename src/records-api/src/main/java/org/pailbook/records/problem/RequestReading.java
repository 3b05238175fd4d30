package org.pailbook.records.problem;

import io.netty.buffer.Unpooled;
import io.netty.channel.ChannelDuplexHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelPromise;
import io.netty.handler.codec.DecoderResult;
import io.netty.handler.codec.http.DefaultFullHttpResponse;
import io.netty.handler.codec.http.FullHttpResponse;
import io.netty.handler.codec.http.HttpContent;
import io.netty.handler.codec.http.HttpMethod;
import io.netty.handler.codec.http.HttpRequest;
import io.netty.handler.codec.http.HttpResponse;
import io.netty.handler.codec.http.HttpResponseStatus;
import io.netty.handler.codec.http.HttpVersion;
import io.netty.handler.codec.http.LastHttpContent;
import io.netty.util.ReferenceCountUtil;
import java.util.Optional;

/**
 * Stands before the HTTP server on one connection: marks requests as unreadable that the server would misread, and answers
 * a body that breaks off in the middle of its chunks.
 *
 * @see "RFC 9112, sections 3.2 (one Host), 6.3 (Transfer-Encoding without a final chunked); numbers from memory"
 */
final class RequestReading extends ChannelDuplexHandler {
    private int unanswered;
    private boolean answerBegun;
    private boolean answeredHere;

    /** Why a request that decoded well is unreadable all the same. */
    static final class Flawed extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient RequestTarget.Flaw flaw;

        Flawed(RequestTarget.Flaw flaw) {
            super(flaw.detail(), null, false, false);
            this.flaw = flaw;
        }

        RequestTarget.Flaw flaw() {
            return flaw;
        }
    }

    @Override
    public void channelRead(ChannelHandlerContext context, Object message) {
        if (message instanceof HttpRequest request) {
            unanswered++;
            if (request.decoderResult().isSuccess()) {
                flawIn(request).ifPresent(flaw -> request.setDecoderResult(DecoderResult.failure(new Flawed(flaw))));
            }
            if (!isHttp1(request)) {
                request.setProtocolVersion(HttpVersion.HTTP_1_1); // the answer would repeat the unknown version
            }
        } else if (message instanceof HttpContent content
                && content.decoderResult().isFailure()) {
            // Only if the request is the one at turn and its answer has not begun; else closing is all that is left.
            if (unanswered == 1 && !answerBegun) {
                answeredHere = true;
                context.writeAndFlush(chunksUnreadable());
            }
        }
        context.fireChannelRead(message);
    }

    @Override
    public void write(ChannelHandlerContext context, Object message, ChannelPromise promise) {
        if (answeredHere) {
            ReferenceCountUtil.release(message);
            promise.setSuccess();
            return;
        }
        boolean isInterim =
                message instanceof HttpResponse response && response.status().code() < 200;
        if (message instanceof HttpResponse && !isInterim) {
            answerBegun = true;
        }
        if (message instanceof LastHttpContent && !isInterim) {
            answerBegun = false;
            unanswered--;
        }
        context.write(message, promise);
    }

    private static Optional<RequestTarget.Flaw> flawIn(HttpRequest request) {
        if (!isHttp1(request)) {
            return malformed("This service speaks HTTP/1.1 and HTTP/1.0.");
        }
        int hosts = request.headers().getAll("Host").size();
        if (hosts > 1 || hosts == 0 && request.protocolVersion().equals(HttpVersion.HTTP_1_1)) {
            return malformed("The request needs exactly one Host header.");
        }
        String coding = request.headers().get("Transfer-Encoding");
        if (coding != null && !coding.trim().equalsIgnoreCase("chunked")) {
            return malformed("The only Transfer-Encoding read here is chunked.");
        }
        boolean isNoPathByRule = request.method().equals(HttpMethod.CONNECT)
                || request.method().equals(HttpMethod.OPTIONS) && request.uri().equals("*");
        return isNoPathByRule ? Optional.empty() : RequestTarget.flawIn(request.uri());
    }

    private static boolean isHttp1(HttpRequest request) {
        return request.protocolVersion().equals(HttpVersion.HTTP_1_1)
                || request.protocolVersion().equals(HttpVersion.HTTP_1_0);
    }

    private static Optional<RequestTarget.Flaw> malformed(String detail) {
        return Optional.of(new RequestTarget.Flaw(ProblemCode.MALFORMED_REQUEST, detail));
    }

    private static FullHttpResponse chunksUnreadable() {
        byte[] body = ProblemAnswer.body(
                ProblemCode.MALFORMED_REQUEST,
                "The chunks of the body could not be read.",
                null,
                ProblemAnswer.newRequestId());
        FullHttpResponse answer = new DefaultFullHttpResponse(
                HttpVersion.HTTP_1_1, HttpResponseStatus.BAD_REQUEST, Unpooled.wrappedBuffer(body));
        answer.headers()
                .set("Content-Type", ProblemBody.MEDIA_TYPE)
                .set("Content-Language", "en")
                .set("Content-Length", body.length)
                .set("Connection", "close");
        SafetyHeaders.each(answer.headers()::set);
        return answer;
    }
}
