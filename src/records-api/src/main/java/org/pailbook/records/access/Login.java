package org.pailbook.records.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.ApiKeys;
import org.pailbook.records.store.UseNotes;

/**
 * Tells whether a key is good now.
 *
 * <p>Keys are looked up by the SHA-256 of their text, so how long that takes says nothing of the text. An address from which many unknown
 * keys came is heard again after a while only; keys that this process has accepted before are heard all the same, or one who guesses
 * behind a shared address would shut out everybody there.
 */
@ApplicationScoped
public class Login {
    private final ApiKeys keys;
    private final RateLimits limits;
    private final UseNotes notes;
    private final Clock clock;
    /** By the hash of their text, good keys and the day last noted for them; no more than there are good keys. */
    private final Map<String, LocalDate> accepted = new ConcurrentHashMap<>();

    @Inject
    Login(ApiKeys keys, RateLimits limits, UseNotes notes, Clock clock) {
        this.keys = keys;
        this.limits = limits;
        this.notes = notes;
        this.clock = clock;
    }

    /**
     * The key with that text.
     *
     * @param address whom it came from
     * @throws Problem if it is unknown, revoked, expired or replaced, or if that address tried too many
     */
    ApiKeyRow accept(String text, String address) {
        String hash = KeyText.sha256(text);
        if (!accepted.containsKey(hash)) {
            limits.requireFewFailedLogins(address);
        }
        Optional<ApiKeyRow> current = keys.bySecretSha256(hash);
        Optional<ApiKeyRow> found = current.or(() -> keys.byPreviousSha256(hash));
        if (found.isEmpty()) {
            accepted.remove(hash);
            limits.countFailedLogin(address);
            throw SentKey.refused(ProblemCode.NOT_AUTHENTICATED, "This key is not known.");
        }
        ApiKeyRow key = found.get();
        requireGood(key);
        if (current.isEmpty() && !key.previousUntil.isAfter(clock.instant())) {
            throw SentKey.refused(
                    ProblemCode.KEY_EXPIRED,
                    "This key was replaced by a new one and worked until " + key.previousUntil + ".");
        }
        noteUse(key, hash);
        return key;
    }

    /** @throws Problem if the key was revoked or has expired */
    private void requireGood(ApiKeyRow key) {
        if (key.revokedAt != null) {
            throw SentKey.refused(ProblemCode.KEY_REVOKED, "This key was revoked.");
        }
        if (key.expiresOn != null && key.expiresOn.isBefore(today())) {
            throw SentKey.refused(ProblemCode.KEY_EXPIRED, "This key expired on " + key.expiresOn + ".");
        }
    }

    /** Whether it is neither revoked nor expired. */
    boolean isGood(ApiKeyRow key) {
        return key.revokedAt == null && (key.expiresOn == null || !key.expiresOn.isBefore(today()));
    }

    /** Once a day for each key, so that reading does not turn into writing. */
    private void noteUse(ApiKeyRow key, String hash) {
        LocalDate today = today();
        if (today.equals(accepted.put(hash, today)) || today.equals(key.lastUsedOn)) {
            return;
        }
        notes.ofKey(key.id, today);
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }
}
