package org.pailbook.records.app;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Texts of answers are English. What keeps answers safe from browsers and caches was put on before any routing. */
final class AnswerHeaderFilter {
    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        response.getHeaders().putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
    }
}
