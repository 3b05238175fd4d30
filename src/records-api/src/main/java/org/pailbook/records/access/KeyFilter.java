package org.pailbook.records.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;

/** Finds the key of a request and makes its owner the caller; without a valid key nothing under {@code /v1} is reached. */
@ApplicationScoped
public class KeyFilter {
    private static final Set<String> NAMES_OF_KEYS =
            Set.of("key", "apikey", "api_key", "api-key", "x-api-key", "access_token", "token", "password");

    private static final String SIGN_IN = "/pages/sign-in";

    private final Login login;
    private final Sessions sessions;
    private final RateLimits limits;
    private final Caller caller;
    private final OpenSampleHerd openSampleHerd;
    private final RoutingContext routing;

    @Inject
    KeyFilter(
            Login login,
            Sessions sessions,
            RateLimits limits,
            Caller caller,
            OpenSampleHerd openSampleHerd,
            RoutingContext routing) {
        this.login = login;
        this.sessions = sessions;
        this.limits = limits;
        this.caller = caller;
        this.openSampleHerd = openSampleHerd;
        this.routing = routing;
    }

    /** An answer for whoever is to be sent elsewhere; mostly none. */
    @ServerRequestFilter(priority = Priorities.AUTHENTICATION)
    public Optional<Response> identify(ContainerRequestContext request, ResourceInfo resource) {
        refuseKeyInAddress(request);
        if (resource.getResourceClass().isAnnotationPresent(WithoutKey.class)) {
            return Optional.empty();
        }
        boolean isPage = resource.getResourceClass().isAnnotationPresent(WithSession.class);
        Optional<String> sent = SentKey.in(request::getHeaderString);
        if (sent.isEmpty()) {
            Optional<ApiKeyRow> signedIn = isPage ? signedIn(request) : Optional.empty();
            if (signedIn.isPresent()) {
                accept(signedIn.get(), false);
                return Optional.empty();
            }
            // any other herd is refused alike whether it exists or not,
            // and with the challenge some spreadsheets wait for
            if (openSampleHerd.admits(request.getUriInfo().getPathParameters().getFirst("herd"))) {
                if (isPage) {
                    caller.become(
                            "sample",
                            "sample herd, reading only",
                            EnumSet.of(Scope.READ),
                            openSampleHerd.codes(),
                            false);
                } else {
                    caller.becomeNobody(openSampleHerd.codes());
                }
                return Optional.empty();
            }
            if (isPage) {
                // people are shown where to sign in; a challenge would open the browser's own box instead
                return Optional.of(Response.seeOther(URI.create(SIGN_IN)).build());
            }
            throw SentKey.missing();
        }
        ApiKeyRow key =
                login.accept(sent.get(), routing.request().remoteAddress().hostAddress());
        boolean isBulk = request.getMethod().equals("POST")
                && request.getUriInfo().getPath().endsWith("/bulk");
        accept(key, isBulk);
        return Optional.empty();
    }

    private void accept(ApiKeyRow key, boolean isBulk) {
        limits.countRequest(key.id, isBulk, routing.response());
        caller.become(key);
    }

    /** Whoever signed in with a key that is still good. */
    private Optional<ApiKeyRow> signedIn(ContainerRequestContext request) {
        return Optional.ofNullable(request.getCookies().get(Sessions.COOKIE))
                .flatMap(cookie -> sessions.keyOf(cookie.getValue()));
    }

    /** An address stands in logs and histories all along the way, so a key there has been given away. */
    private static void refuseKeyInAddress(ContainerRequestContext request) {
        request.getUriInfo().getQueryParameters().forEach((name, values) -> {
            boolean isKey = NAMES_OF_KEYS.contains(name.toLowerCase(Locale.ROOT))
                    || KeyText.isIn(name)
                    || values.stream().anyMatch(KeyText::isIn);
            if (isKey) {
                throw new Problem(
                        ProblemCode.UNKNOWN_PARAMETER,
                        "A key is never read from the address, where others may have seen it: revoke it, and send the new one"
                                + " as a header.",
                        List.of(Fault.inParameter(
                                KeyText.isIn(name) ? "?" : Fault.shorten(name),
                                "key-in-address",
                                "send the key as X-API-Key, as Bearer token or as Basic password")));
            }
        });
    }
}
