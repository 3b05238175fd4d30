package org.pailbook.records.app;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.pailbook.records.wire.Page;

/** Headers of every answer: texts are English, media types are meant as they stand, no cache keeps a herd's records,
 * and a page names the next one (RFC 8288, from memory). */
final class AnswerHeaderFilter {
    @ServerResponseFilter
    void add(ContainerRequestContext request, ContainerResponseContext response) {
        MultivaluedMap<String, Object> headers = response.getHeaders();
        headers.putSingle(HttpHeaders.CONTENT_LANGUAGE, "en");
        headers.putSingle("X-Content-Type-Options", "nosniff");
        headers.putSingle("Referrer-Policy", "no-referrer");
        headers.putSingle(HttpHeaders.CACHE_CONTROL, "private, no-store");
        if (response.getEntity() instanceof Page<?> page && page.next() != null) {
            headers.putSingle(HttpHeaders.LINK, "<" + page.next() + ">; rel=\"next\"");
        }
    }
}
