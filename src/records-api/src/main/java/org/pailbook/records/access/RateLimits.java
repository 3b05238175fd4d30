package org.pailbook.records.access;

import io.vertx.core.http.HttpServerResponse;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * How often a key, a feed or an address may ask. Each process counts for itself.
 *
 * @see "draft-ietf-httpapi-ratelimit-headers-10, the headers RateLimit-Policy and RateLimit (their form from memory)"
 */
@ApplicationScoped
public class RateLimits {
    private final Buckets requests;
    private final Buckets bulks;
    private final Buckets feeds;
    private final Buckets failedLogins;

    @Inject
    RateLimits(
            @ConfigProperty(name = "pailbook.requests.per.minute") int requests,
            @ConfigProperty(name = "pailbook.bulks.per.minute") int bulks,
            @ConfigProperty(name = "pailbook.feed.requests.per.minute") int feeds,
            @ConfigProperty(name = "pailbook.failed.logins.per.minute") int failedLogins) {
        this.requests = new Buckets("requests", requests);
        this.bulks = new Buckets("bulk", bulks);
        this.feeds = new Buckets("feed", feeds);
        this.failedLogins = new Buckets("failed-logins", failedLogins);
    }

    /** Counts a request of a key and tells it where it stands. */
    void countRequest(String keyId, boolean isBulk, HttpServerResponse answer) {
        count(keyId, isBulk ? List.of(requests, bulks) : List.of(requests), answer);
    }

    /** Counts a request to a feed and tells it where it stands. */
    public void countFeed(String feedId, HttpServerResponse answer) {
        count(feedId, List.of(feeds), answer);
    }

    /** @throws Problem {@code rate-limited} if too many unknown keys came from that address of late */
    void requireFewFailedLogins(String address) {
        if (!failedLogins.isOff()) {
            Buckets.Standing standing = failedLogins.look(address);
            if (!standing.allowed()) {
                throw refused("Too many unknown keys came from this address.", List.of(standing), standing);
            }
        }
    }

    void countFailedLogin(String address) {
        if (!failedLogins.isOff()) {
            failedLogins.take(address);
        }
    }

    private static void count(String name, List<Buckets> limits, HttpServerResponse answer) {
        List<Buckets.Standing> standings = limits.stream()
                .filter(limit -> !limit.isOff())
                .map(limit -> limit.take(name))
                .toList();
        for (Buckets.Standing standing : standings) {
            if (!standing.allowed()) {
                throw refused(
                        "At most " + standing.perMinute() + " a minute (" + standing.policy()
                                + "); Retry-After says when to go on.",
                        standings,
                        standing);
            }
        }
        if (!standings.isEmpty()) {
            answer.putHeader("RateLimit-Policy", joined(standings, Buckets.Standing::policyHeader));
            answer.putHeader("RateLimit", joined(standings, Buckets.Standing::standingHeader));
        }
    }

    private static Problem refused(String detail, List<Buckets.Standing> standings, Buckets.Standing exhausted) {
        return new Problem(ProblemCode.RATE_LIMITED, detail)
                .withHeader("Retry-After", Long.toString(exhausted.retrySeconds()))
                .withHeader("RateLimit-Policy", joined(standings, Buckets.Standing::policyHeader))
                .withHeader("RateLimit", joined(standings, Buckets.Standing::standingHeader));
    }

    private static String joined(
            List<Buckets.Standing> standings, java.util.function.Function<Buckets.Standing, String> header) {
        return standings.stream().map(header).collect(Collectors.joining(", "));
    }
}
