package org.pailbook.records.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.ApiKeys;
import org.pailbook.records.store.FeedRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;

/** Lets who opens a feed read one herd, as long as the key that made the feed may. */
@ApplicationScoped
public class FeedAccess {
    private final ApiKeys keys;
    private final Herds herds;
    private final Login login;
    private final RateLimits limits;
    private final Caller caller;
    private final RoutingContext routing;

    @Inject
    FeedAccess(ApiKeys keys, Herds herds, Login login, RateLimits limits, Caller caller, RoutingContext routing) {
        this.keys = keys;
        this.herds = herds;
        this.login = login;
        this.limits = limits;
        this.caller = caller;
        this.routing = routing;
    }

    /**
     * Counts this request.
     *
     * @param feed what the address led to; an unknown one counts as a failed login
     * @throws Problem {@code not-found} for an unknown one, {@code rate-limited} after too many
     */
    public FeedRow count(Optional<FeedRow> feed) {
        String address = routing.request().remoteAddress().hostAddress();
        if (feed.isEmpty()) {
            limits.requireFewFailedLogins(address);
            limits.countFailedLogin(address);
            throw new Problem(ProblemCode.NOT_FOUND, "There is no such feed.");
        }
        limits.countFeed(feed.get().id, routing.response());
        return feed.get();
    }

    /** The herd of the feed. */
    public HerdRow toRead(FeedRow feed) {
        ApiKeyRow maker = keys.findByIdOptional(feed.keyId).orElseThrow(Problem::notFound);
        if (!login.isGood(maker)) {
            // no 401: a key sent along would change nothing, and a spreadsheet would ask its user for one
            throw new Problem(ProblemCode.FEED_ENDED, "The key that made this feed works no more.");
        }
        HerdRow herd = herds.findByIdOptional(feed.herdId).orElseThrow(Problem::notFound);
        caller.become(maker);
        if (!caller.reaches(herd.code)) {
            throw Problem.notFound();
        }
        caller.requireScope(Scope.READ);
        caller.become("feed", "a feed, reading one table", EnumSet.of(Scope.READ), Set.of(herd.code), false);
        return herd;
    }
}
