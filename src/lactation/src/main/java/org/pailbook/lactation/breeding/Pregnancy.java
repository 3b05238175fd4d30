package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * A pregnancy: since when, how that is known, and what became of it.
 *
 * @param conception the day; empty if she was found pregnant and nothing tells since when
 * @param known how the day is known
 * @param sireBreed breed of the bull; empty text if not recorded
 * @param confirmedOn the first check that found it; empty if only a calving or an abortion told
 * @param checks how often she was found pregnant of it
 * @param doubtedOn she was served after it was found
 * @param lostOn found open again, or aborted
 * @param calvedOn the calving it ended in
 */
public record Pregnancy(
        Optional<LocalDate> conception,
        Known known,
        String sireBreed,
        Optional<LocalDate> confirmedOn,
        int checks,
        Optional<LocalDate> doubtedOn,
        Optional<LocalDate> lostOn,
        Optional<LocalDate> calvedOn) {

    /** How the day of conception is known. */
    public enum Known {
        /** A check found her pregnant of this service. */
        SERVICE,
        /** The veterinarian put an age to it. */
        AGE_AT_CHECK,
        /** A calving or an abortion told, after the fact. */
        INFERRED,
        NOT_KNOWN
    }

    public Pregnancy {
        Objects.requireNonNull(conception, "conception");
        Objects.requireNonNull(known, "known");
        Objects.requireNonNull(sireBreed, "sireBreed");
        Objects.requireNonNull(confirmedOn, "confirmedOn");
        Objects.requireNonNull(doubtedOn, "doubtedOn");
        Objects.requireNonNull(lostOn, "lostOn");
        Objects.requireNonNull(calvedOn, "calvedOn");
    }

    /** Whether it still goes on. */
    public boolean goesOn() {
        return lostOn.isEmpty() && calvedOn.isEmpty();
    }

    Pregnancy foundAgain() {
        return new Pregnancy(conception, known, sireBreed, confirmedOn, checks + 1, Optional.empty(), lostOn, calvedOn);
    }

    Pregnancy doubted(LocalDate day) {
        return new Pregnancy(
                conception,
                known,
                sireBreed,
                confirmedOn,
                checks,
                doubtedOn.isPresent() ? doubtedOn : Optional.of(day),
                lostOn,
                calvedOn);
    }

    Pregnancy lost(LocalDate day) {
        return new Pregnancy(conception, known, sireBreed, confirmedOn, checks, doubtedOn, Optional.of(day), calvedOn);
    }

    Pregnancy calved(LocalDate day) {
        return new Pregnancy(conception, known, sireBreed, confirmedOn, checks, doubtedOn, lostOn, Optional.of(day));
    }

    Pregnancy since(LocalDate day, Known how, String breedOfSire) {
        return new Pregnancy(Optional.of(day), how, breedOfSire, confirmedOn, checks, doubtedOn, lostOn, calvedOn);
    }
}
