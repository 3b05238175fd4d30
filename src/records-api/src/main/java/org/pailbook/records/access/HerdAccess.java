package org.pailbook.records.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.store.RecordIds;

/** Loads the herd or animal a path names, if the caller reaches it. */
@ApplicationScoped
public class HerdAccess {
    private final Herds herds;
    private final KnownAnimals animals;
    private final Caller caller;

    @Inject
    HerdAccess(Herds herds, KnownAnimals animals, Caller caller) {
        this.herds = herds;
        this.animals = animals;
        this.caller = caller;
    }

    public HerdRow toRead(String herdCode) {
        return reach(herdCode, Scope.READ);
    }

    public HerdRow toWrite(String herdCode) {
        return reach(herdCode, Scope.WRITE);
    }

    /** The animal of a path, our id or {@code scheme:id}, as it was known at the last change the herd's row names. */
    public AnimalRow animal(HerdRow herd, String reference) {
        return find(herd, reference).filter(animal -> !animal.withdrawn).orElseThrow(Problem::notFound);
    }

    /** The same, also if its record was withdrawn. */
    public AnimalRow animalEverKnown(HerdRow herd, String reference) {
        return find(herd, reference).orElseThrow(Problem::notFound);
    }

    private Optional<AnimalRow> find(HerdRow herd, String reference) {
        // a scheme may hold colons (urn:...), an identifier seldom: the last colon parts them
        int colon = reference.lastIndexOf(':');
        if (reference.chars().anyMatch(Character::isISOControl)) {
            return Optional.empty();
        }
        if (colon > 0) {
            return animals.byIdentifier(
                    herd, new AnimalIdentifier(reference.substring(0, colon), reference.substring(colon + 1)));
        }
        return RecordIds.isId(reference) ? animals.byId(herd, reference) : Optional.empty();
    }

    /** The reach is checked before the scope, so that a herd out of reach looks the same to every key. */
    private HerdRow reach(String herdCode, Scope scope) {
        if (!Herds.isCode(herdCode) || !caller.reaches(herdCode)) {
            throw Problem.notFound();
        }
        HerdRow herd = herds.byCode(herdCode).orElseThrow(Problem::notFound);
        caller.requireScope(scope);
        return herd;
    }
}
