package org.pailbook.records.access;

import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import java.net.URI;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * Lets pages be changed from our own pages only. Browsers send the session's cookie with no other site's requests ({@code SameSite=Strict}), but
 * they do send a Basic password they remember; they also say where a request came from, and that is held against where it went.
 *
 * @see "W3C Fetch Metadata Request Headers; OWASP Cross-Site Request Forgery Prevention Cheat Sheet (both from memory)"
 */
public final class SameSiteFilter {
    private static final String PAGES = "/pages/";
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
    /** {@code none}: somebody typed the address. */
    private static final Set<String> OURS = Set.of("same-origin", "none");

    @ServerRequestFilter(priority = Priorities.AUTHENTICATION - 1)
    public void refuseOtherSites(ContainerRequestContext request) {
        if (READING.contains(request.getMethod())
                || !request.getUriInfo().getRequestUri().getPath().startsWith(PAGES)) {
            return;
        }
        String site = request.getHeaderString("Sec-Fetch-Site");
        String origin = request.getHeaderString("Origin");
        // what says neither is no browser, and sends nobody's cookie or password but its own
        boolean isOurs = site != null ? OURS.contains(site) : origin == null || isHere(origin, request);
        if (!isOurs) {
            throw new Problem(ProblemCode.SCOPE_MISSING, "The form came from another site.");
        }
    }

    private static boolean isHere(String origin, ContainerRequestContext request) {
        String from;
        try {
            from = URI.create(origin).getRawAuthority();
        } catch (IllegalArgumentException noAddress) {
            return false;
        }
        String forwarded = request.getHeaderString("X-Forwarded-Host");
        return from != null && (from.equals(request.getHeaderString("Host")) || from.equals(forwarded));
    }
}
