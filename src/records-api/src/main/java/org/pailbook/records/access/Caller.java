package org.pailbook.records.access;

import jakarta.enterprise.context.RequestScoped;
import java.util.EnumSet;
import java.util.Set;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/** Who sent the current request. */
@RequestScoped
public class Caller {
    private String keyId;
    private String label;
    private Set<Scope> scopes = EnumSet.noneOf(Scope.class);
    private Set<String> herdCodes = Set.of();
    private boolean everyHerd;

    void become(String id, String name, Set<Scope> may, Set<String> herds, boolean all) {
        this.keyId = id;
        this.label = name;
        this.scopes = may;
        this.herdCodes = Set.copyOf(herds);
        this.everyHerd = all;
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
            throw new Problem(ProblemCode.SCOPE_MISSING, "This key does not have the scope " + scope.onWire() + ".");
        }
    }

    /** @throws Problem {@code scope-missing} if the key is limited to certain herds */
    public void requireEveryHerd() {
        if (!everyHerd) {
            throw new Problem(ProblemCode.SCOPE_MISSING, "This needs a key that reaches all herds.");
        }
    }
}
