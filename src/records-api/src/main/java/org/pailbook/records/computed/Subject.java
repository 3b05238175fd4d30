package org.pailbook.records.computed;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.AsOf;

/**
 * Whose lactation is computed, and for which day.
 *
 * @param herd its code; empty if the lactation was only posted
 * @param animal empty if the lactation was only posted
 * @param breed as recorded or posted; empty text if it is not known
 * @param parity asked for or known
 * @param lactation empty if there is none of that parity
 * @param findings about the lactation itself, or why there is none
 */
public record Subject(
        Optional<String> herd,
        Optional<AnimalIdentifier> animal,
        String breed,
        Optional<Integer> parity,
        Optional<Lactation> lactation,
        AsOf asOf,
        List<Finding> findings) {

    public Subject {
        findings = List.copyOf(findings);
    }

    String calvedOn() {
        return lactation.map(known -> known.calvingDate().toString()).orElse(null);
    }

    String day() {
        return asOf.day().toString();
    }

    String computedAt() {
        return asOf.computedAt().toString();
    }
}
