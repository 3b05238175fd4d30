package org.pailbook.records.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
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

    private final Login login;
    private final RateLimits limits;
    private final Caller caller;
    private final OpenSampleHerd openSampleHerd;
    private final RoutingContext routing;

    @Inject
    KeyFilter(Login login, RateLimits limits, Caller caller, OpenSampleHerd openSampleHerd, RoutingContext routing) {
        this.login = login;
        this.limits = limits;
        this.caller = caller;
        this.openSampleHerd = openSampleHerd;
        this.routing = routing;
    }

    @ServerRequestFilter(priority = Priorities.AUTHENTICATION)
    public void identify(ContainerRequestContext request, ResourceInfo resource) {
        refuseKeyInAddress(request);
        if (resource.getResourceClass().isAnnotationPresent(WithoutKey.class)) {
            return;
        }
        Optional<String> sent = SentKey.in(request::getHeaderString);
        if (sent.isEmpty()) {
            if (openSampleHerd.admits()) {
                caller.become(
                        "sample", "sample herd, reading only", EnumSet.of(Scope.READ), openSampleHerd.codes(), false);
                return;
            }
            throw SentKey.refused(
                    ProblemCode.NOT_AUTHENTICATED, "Send a key as X-API-Key, as Bearer token or as Basic password.");
        }
        ApiKeyRow key =
                login.accept(sent.get(), routing.request().remoteAddress().hostAddress());
        boolean isBulk = request.getMethod().equals("POST")
                && request.getUriInfo().getPath().endsWith("/bulk");
        limits.countRequest(key.id, isBulk, routing.response());
        caller.become(key);
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
