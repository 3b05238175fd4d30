package org.pailbook.records.app;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Headers of every answer: texts are English, media types are meant as they stand, and no cache keeps a herd's records unless an answer says how it may. */
final class AnswerHeaderFilter {
    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        MultivaluedMap<String, Object> headers = response.getHeaders();
        headers.putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
        headers.putSingle("X-Content-Type-Options", "nosniff");
        headers.putSingle("Referrer-Policy", "no-referrer");
        headers.putIfAbsent(HttpHeaders.CACHE_CONTROL, List.of("private, no-store"));
    }
}
