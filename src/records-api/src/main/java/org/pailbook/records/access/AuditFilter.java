package org.pailbook.records.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.pailbook.records.problem.RequestId;

/**
 * One line in the log for each request that changed something: who, which herd, what, how many. Never a key's text, never a
 * record's content. The category is {@code pailbook.audit}, so that it can be sent where it is to be kept.
 */
@ApplicationScoped
public class AuditFilter {
    private static final Logger LOG = Logger.getLogger("pailbook.audit");
    private static final String NOTE = "pailbook.audit-note";
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
    private static final Pattern OF_HERD =
            Pattern.compile("/(?:v1|pages)/herds/([a-z0-9-]{1,40})(?:/([a-z-]{1,40})(/.*)?)?");
    private static final Pattern OTHER = Pattern.compile("/v1/([a-z-]{1,40})(/.*)?");

    private final Caller caller;
    private final RoutingContext routing;

    @Inject
    AuditFilter(Caller caller, RoutingContext routing) {
        this.caller = caller;
        this.routing = routing;
    }

    /** What became of the rows of this request, as {@code name=value} joined by blanks; it goes into the line. */
    public static void note(RoutingContext routing, String counts) {
        routing.put(NOTE, counts);
    }

    @ServerResponseFilter
    public void write(ContainerRequestContext request, ContainerResponseContext response) {
        String path = routing.request().path();
        if (READING.contains(request.getMethod())
                || response.getStatus() >= 300
                || path.startsWith("/v1/calculate/")
                || caller.keyId() == null) {
            return;
        }
        Matcher ofHerd = OF_HERD.matcher(path);
        Matcher other = OTHER.matcher(path);
        String herd = ofHerd.matches() ? ofHerd.group(1) : "-";
        String kind = ofHerd.matches()
                ? (ofHerd.group(2) == null ? "herds" : ofHerd.group(2))
                : (other.matches() ? other.group(1) : "-");
        String counts = routing.get(NOTE);
        LOG.infof(
                "write key=%s herd=%s kind=%s action=%s status=%d %s request=%s",
                caller.keyId(),
                herd,
                kind,
                action(request.getMethod(), path),
                response.getStatus(),
                counts == null ? "-" : counts,
                RequestId.of(routing));
    }

    private static String action(String method, String path) {
        String last = path.substring(path.lastIndexOf('/') + 1);
        return Set.of("bulk", "rotate").contains(last) ? last : method.toLowerCase(Locale.ROOT);
    }
}
