package org.pailbook.records.access;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemAnswer;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;

/** Lets nobody read the meters of the service but who holds an administrator's key, unless the settings open them to all. */
@ApplicationScoped
public class MetricsGate {
    private static final String METERS = "/q/metrics*";
    /** After the gate of all requests, before the route that answers. */
    private static final int EARLY = -100_000;

    private final Login login;
    private final boolean open;

    @Inject
    MetricsGate(Login login, @ConfigProperty(name = "pailbook.metrics.open") boolean open) {
        this.login = login;
        this.open = open;
    }

    void guard(@Observes Router router) {
        if (!open) {
            router.route(METERS).order(EARLY).blockingHandler(this::judge, false);
        }
    }

    @ActivateRequestContext
    void judge(RoutingContext routing) {
        HttpServerRequest request = routing.request();
        try {
            ApiKeyRow key = login.accept(
                    SentKey.in(request::getHeader)
                            .orElseThrow(() -> SentKey.refused(
                                    ProblemCode.NOT_AUTHENTICATED, "The meters are read with an administrator's key.")),
                    request.remoteAddress().hostAddress());
            if (!Scope.ofWords(key.scopes).contains(Scope.ADMIN)) {
                throw new Problem(ProblemCode.SCOPE_MISSING, "This key does not have the scope admin.");
            }
            if (!key.herdCodes.equals(Caller.ALL_HERDS)) {
                // the meters count what is done in every herd
                throw new Problem(ProblemCode.SCOPE_MISSING, "This needs a key that reaches all herds.");
            }
        } catch (Problem problem) {
            ProblemAnswer.send(routing, problem);
            return;
        }
        routing.next();
    }
}
