package org.pailbook.records.access;

import jakarta.enterprise.context.RequestScoped;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;

/** Who sent the current request. */
@RequestScoped
public class Caller {
    public static final String ALL_HERDS = "*";

    private String keyId;
    private String label;
    private Set<Scope> scopes = EnumSet.noneOf(Scope.class);
    private Set<String> herdCodes = Set.of();
    private boolean everyHerd;
    private boolean isNobody;
    private ApiKeyRow key;

    /** The holder of a key that was accepted. */
    void become(ApiKeyRow accepted) {
        boolean all = accepted.herdCodes.equals(ALL_HERDS);
        become(
                accepted.id,
                accepted.label,
                Scope.ofWords(accepted.scopes),
                all ? Set.of() : Set.of(accepted.herdCodes.split(" ")),
                all);
        this.key = accepted;
    }

    void become(String id, String name, Set<Scope> may, Set<String> herds, boolean all) {
        this.keyId = id;
        this.label = name;
        this.scopes = may;
        this.herdCodes = Set.copyOf(herds);
        this.everyHerd = all;
        this.isNobody = false;
        this.key = null;
    }

    /** Somebody who sent no key and reads the herds that are open to everybody on this machine. */
    void becomeNobody(Set<String> openHerds) {
        become("sample", "sample herd, reading only", EnumSet.of(Scope.READ), openHerds, false);
        this.isNobody = true;
    }

    /** The key that was sent; nothing for who reads the open sample herd or a feed. */
    public Optional<ApiKeyRow> key() {
        return Optional.ofNullable(key);
    }

    /** Id of the key, kept with everything it writes. */
    public String keyId() {
        return keyId;
    }

    public String label() {
        return label;
    }

    public Set<Scope> scopes() {
        return scopes;
    }

    public Set<String> herdCodes() {
        return herdCodes;
    }

    public boolean reachesEveryHerd() {
        return everyHerd;
    }

    public boolean reaches(String herdCode) {
        return everyHerd || herdCodes.contains(herdCode);
    }

    /** @throws Problem {@code scope-missing} if the key has neither this scope nor {@code admin} */
    public void requireScope(Scope scope) {
        if (!scopes.contains(scope) && !scopes.contains(Scope.ADMIN)) {
            requireKey();
            throw new Problem(ProblemCode.SCOPE_MISSING, "This key does not have the scope " + scope.onWire() + ".");
        }
    }

    /** @throws Problem {@code scope-missing} if the key is limited to certain herds */
    public void requireEveryHerd() {
        if (!everyHerd) {
            requireKey();
            throw new Problem(ProblemCode.SCOPE_MISSING, "This needs a key that reaches all herds.");
        }
    }

    /** Who sent no key is asked for one, rather than told what a key may not do. */
    private void requireKey() {
        if (isNobody) {
            throw SentKey.missing();
        }
    }
}
