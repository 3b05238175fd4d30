package org.pailbook.records.app;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.net.URI;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.pailbook.records.wire.Page;

/**
 * Texts of answers are English, and a page of a list names the next one (RFC 8288, from memory). What keeps answers safe from browsers and
 * caches is added by the first route of all, last, where an answer does not say it itself.
 *
 * <p>An address of ours goes out without scheme and host (RFC 9110, section 10.2.2, allows that; from memory): behind a proxy that ends
 * TLS only the caller knows them.
 */
final class AnswerHeaderFilter {
    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        response.getHeaders().putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
        if (response.getHeaders().getFirst(HttpHeaders.LOCATION) instanceof URI location) {
            response.getHeaders().putSingle(HttpHeaders.LOCATION, withoutHost(location));
        }
        if (response.getEntity() instanceof Page<?> page && page.next() != null) {
            response.getHeaders().putSingle(HttpHeaders.LINK, "<" + page.next() + ">; rel=\"next\"");
        }
    }

    private static String withoutHost(URI location) {
        return location.toString().replaceFirst("^https?://[^/]+", "");
    }
}
