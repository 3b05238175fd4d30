package org.pailbook.records.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Stops a body that grows over the limit while it is read. A body whose length is declared is refused before, by {@link RequestGate}; this
 * is for chunked ones, which the HTTP layer would cut off with an empty answer.
 *
 * <p>The limit of the HTTP layer ({@code quarkus.http.limits.max-body-size}) must lie above this one.
 */
@ApplicationScoped
public class BodyLimit {
    static final String SETTING = "pailbook.http.max-body-bytes";
    /** 32 MiB. */
    static final String DEFAULT = "33554432";

    private static final long LINGER_MILLIS = 2_000;

    private final long mostBytes;

    @Inject
    BodyLimit(@ConfigProperty(name = SETTING, defaultValue = DEFAULT) long mostBytes) {
        this.mostBytes = mostBytes;
    }

    @ServerRequestFilter
    public void limit(ContainerRequestContext request, RoutingContext routing) {
        if (request.getHeaderString("Transfer-Encoding") != null) {
            request.setEntityStream(new LimitedBody(request.getEntityStream(), mostBytes, routing));
        }
    }

    static String detail(long mostBytes) {
        return "A body may have " + mostBytes + " bytes; send a large table in parts.";
    }

    private static final class LimitedBody extends FilterInputStream {
        private final long mostBytes;
        private final RoutingContext routing;
        private long readBytes;

        LimitedBody(InputStream body, long mostBytes, RoutingContext routing) {
            super(body);
            this.mostBytes = mostBytes;
            this.routing = routing;
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            count(value < 0 ? 0 : 1);
            return value;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int read = super.read(into, from, length);
            count(read);
            return read;
        }

        private void count(int read) {
            readBytes += Math.max(0, read);
            if (readBytes > mostBytes) {
                Lingering.closeAfterAnswer(routing, LINGER_MILLIS);
                throw new Problem(ProblemCode.TOO_LARGE, detail(mostBytes));
            }
        }
    }
}
