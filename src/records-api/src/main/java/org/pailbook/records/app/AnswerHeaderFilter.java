package org.pailbook.records.app;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.pailbook.records.wire.Page;

/**
 * Texts of answers are English, and a page of a list names the next one (RFC 8288, from memory). What keeps answers safe from browsers and
 * caches is added by the first route of all, last, where an answer does not say it itself.
 */
final class AnswerHeaderFilter {
    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        response.getHeaders().putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
        if (response.getEntity() instanceof Page<?> page && page.next() != null) {
            response.getHeaders().putSingle(HttpHeaders.LINK, "<" + page.next() + ">; rel=\"next\"");
        }
    }
}
