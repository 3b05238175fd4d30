package org.pailbook.records.app;

import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.pailbook.records.wire.Page;

/**
 * Texts of answers are English, and a page of a list names the next one (RFC 8288, from memory).
 *
 * <p>What keeps answers safe from browsers and caches was put on before any routing; an answer that says it otherwise, as a page with a
 * style sheet does, replaces it. Both together would be the stricter of the two, and the page without its style.
 */
final class AnswerHeaderFilter {
    private final RoutingContext routing;

    @Inject
    AnswerHeaderFilter(RoutingContext routing) {
        this.routing = routing;
    }

    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        response.getHeaders().keySet().forEach(routing.response().headers()::remove);
        response.getHeaders().putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
        if (response.getEntity() instanceof Page<?> page && page.next() != null) {
            response.getHeaders().putSingle(HttpHeaders.LINK, "<" + page.next() + ">; rel=\"next\"");
        }
    }
}
