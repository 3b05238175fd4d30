package org.pailbook.records.page;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.net.URI;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * Refuses forms that another site lets a browser send with a key it remembers from its own box (Basic). The cookie of who signed in needs no such
 * care: browsers keep it from other sites.
 */
final class PageFormFilter {
    @ServerRequestFilter
    void refuseFormsOfOtherSites(ContainerRequestContext request) {
        String origin = request.getHeaderString("Origin");
        boolean isForm = request.getMethod().equals("POST")
                && request.getUriInfo().getPath().startsWith("/pages")
                && request.getHeaderString(HttpHeaders.AUTHORIZATION) != null;
        if (isForm && origin != null && !isOwn(origin, request.getHeaderString(HttpHeaders.HOST))) {
            throw new Problem(ProblemCode.SCOPE_MISSING, "The form came from another site.");
        }
    }

    private static boolean isOwn(String origin, String host) {
        try {
            return host != null && host.equals(URI.create(origin).getAuthority());
        } catch (IllegalArgumentException noAddress) {
            return false;
        }
    }
}
