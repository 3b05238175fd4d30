package org.pailbook.records.feed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.pailbook.records.access.KeyText;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.FeedRow;
import org.pailbook.records.store.Feeds;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.UseNotes;
import org.pailbook.records.store.WriteGate;

/** Makes, finds and revokes feeds. */
@ApplicationScoped
class FeedKeyStore {
    private final Feeds feeds;
    private final WriteGate gate;
    private final UseNotes notes;
    private final Clock clock;

    @Inject
    FeedKeyStore(Feeds feeds, WriteGate gate, UseNotes notes, Clock clock) {
        this.feeds = feeds;
        this.gate = gate;
        this.notes = notes;
        this.clock = clock;
    }

    /** A new feed: the row as kept, and its secret, which is not kept and can be shown this once only. */
    record MadeFeed(FeedRow row, String token) {}

    MadeFeed create(HerdRow herd, NewFeed wanted, String keyId) {
        String token = KeyText.nextForAddress();
        FeedRow row = new FeedRow();
        row.id = RecordIds.next();
        row.tokenSha256 = KeyText.sha256(token);
        row.herdId = herd.id;
        row.report = wanted.report();
        row.keyId = keyId;
        row.createdAt = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        row.expiresOn = wanted.expiresOn();
        gate.write(session -> session.insert(row));
        return new MadeFeed(row, token);
    }

    /** @param keyId only feeds of that key; null for all */
    List<FeedRow> page(String keyId, String afterId, int most) {
        return feeds.page(keyId, afterId, most);
    }

    /** @param keyId only if it is a feed of that key; null for any */
    void revoke(String id, String keyId) {
        Optional<FeedRow> feed = RecordIds.isId(id)
                ? feeds.findByIdOptional(id).filter(row -> keyId == null || row.keyId.equals(keyId))
                : Optional.empty();
        feed.orElseThrow(Problem::notFound);
        gate.write(session -> session.createMutationQuery(
                        "update FeedRow set revokedAt = coalesce(revokedAt, :now) where id = :id")
                .setParameter("now", clock.instant().truncatedTo(ChronoUnit.MILLIS))
                .setParameter("id", id)
                .executeUpdate());
    }

    /** The feed with that secret, if there is one, and it works today. */
    FeedRow working(FeedRow feed) {
        if (feed.revokedAt != null) {
            throw new Problem(ProblemCode.FEED_ENDED, "This feed was revoked.");
        }
        if (feed.expiresOn.isBefore(today())) {
            throw new Problem(ProblemCode.FEED_ENDED, "This feed expired on " + feed.expiresOn + ".");
        }
        return feed;
    }

    Optional<FeedRow> withToken(String token) {
        return feeds.byTokenSha256(KeyText.sha256(token));
    }

    /** Once a day for each feed, so that reading does not turn into writing. */
    void noteUse(FeedRow feed) {
        LocalDate today = today();
        if (!today.equals(feed.lastUsedOn)) {
            notes.ofFeed(feed.id, today);
        }
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }
}
