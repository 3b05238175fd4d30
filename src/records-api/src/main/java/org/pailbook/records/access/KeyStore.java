package org.pailbook.records.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.ApiKeys;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.WriteGate;

/** Makes and revokes keys. */
@ApplicationScoped
public class KeyStore {
    private final ApiKeys keys;
    private final WriteGate gate;
    private final Clock clock;

    @Inject
    KeyStore(ApiKeys keys, WriteGate gate, Clock clock) {
        this.keys = keys;
        this.gate = gate;
        this.clock = clock;
    }

    /** A new key: the row as kept, and its text, which is not kept and can be shown this once only. */
    public record MadeKey(ApiKeyRow row, String text) {}

    public MadeKey create(String label, Set<Scope> scopes, Collection<String> herdCodes, LocalDate expiresOn) {
        String text = KeyText.next();
        return new MadeKey(insert(text, label, scopes, herdCodes, expiresOn), text);
    }

    public List<ApiKeyRow> all() {
        return keys.list("order by createdAt, id");
    }

    /**
     * Gives a key a new text.
     *
     * @param overlap how long the old text works on
     */
    public MadeKey rotate(String id, Duration overlap) {
        if (!RecordIds.isId(id)) {
            throw Problem.notFound();
        }
        String text = KeyText.next();
        Instant until = clock.instant().plus(overlap).truncatedTo(ChronoUnit.MILLIS);
        ApiKeyRow rotated = gate.write(session -> {
            ApiKeyRow key = session.get(ApiKeyRow.class, id);
            if (key == null || key.revokedAt != null) {
                throw Problem.notFound();
            }
            key.previousSha256 = key.secretSha256;
            key.previousUntil = until;
            key.secretSha256 = KeyText.sha256(text);
            session.update(key);
            return key;
        });
        return new MadeKey(rotated, text);
    }

    /** Makes a key useless from now on. */
    public void revoke(String id) {
        if (!RecordIds.isId(id)) {
            throw Problem.notFound();
        }
        boolean found = gate.write(session ->
                session.createMutationQuery("update ApiKeyRow set revokedAt = coalesce(revokedAt, :now) where id = :id")
                                .setParameter("now", clock.instant().truncatedTo(ChronoUnit.MILLIS))
                                .setParameter("id", id)
                                .executeUpdate()
                        == 1);
        if (!found) {
            throw Problem.notFound();
        }
    }

    /**
     * Sees to it that somebody can administer the service.
     *
     * @param chosen text of an administrator's key chosen by who runs the service; it is added unless it is there
     * @return the text of a new key, if there was no key at all and none was chosen
     */
    public Optional<String> ensureAdministrator(Optional<String> chosen) {
        Set<Scope> everything = Set.of(Scope.values());
        if (chosen.isPresent()) {
            if (keys.bySecretSha256(KeyText.sha256(chosen.get())).isEmpty()) {
                insert(
                        chosen.get(),
                        "administrator, from the environment",
                        everything,
                        List.of(Caller.ALL_HERDS),
                        null);
            }
            return Optional.empty();
        }
        if (keys.count() > 0) {
            return Optional.empty();
        }
        return Optional.of(create("first administrator", everything, List.of(Caller.ALL_HERDS), null)
                .text());
    }

    private ApiKeyRow insert(
            String text, String label, Set<Scope> scopes, Collection<String> herdCodes, LocalDate expiresOn) {
        ApiKeyRow row = new ApiKeyRow();
        row.id = RecordIds.next();
        row.secretSha256 = KeyText.sha256(text);
        row.label = label;
        row.scopes = scopes.stream().sorted().map(Scope::onWire).collect(Collectors.joining(" "));
        row.herdCodes = String.join(" ", herdCodes);
        row.createdAt = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        row.expiresOn = expiresOn;
        gate.write(session -> session.insert(row));
        return row;
    }
}
