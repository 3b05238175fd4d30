package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;

/**
 * The lactations of one cow, in order of calving, and what belongs to none of them.
 *
 * @param asOf later events took no part
 * @param lactations in order of calving
 * @param testsBeforeFirstCalving kept, in order of date; they take part in no lactation
 * @param findings what concerns no single lactation
 */
public record CowLactations(
        LocalDate asOf,
        List<AssembledLactation> lactations,
        List<TestDay> testsBeforeFirstCalving,
        List<Finding> findings) {

    public CowLactations {
        Objects.requireNonNull(asOf, "asOf");
        lactations = List.copyOf(lactations);
        testsBeforeFirstCalving = List.copyOf(testsBeforeFirstCalving);
        findings = List.copyOf(findings);
    }

    /** The last lactation, whether it goes on or has ended. */
    public Optional<AssembledLactation> latest() {
        return lactations.isEmpty() ? Optional.empty() : Optional.of(lactations.get(lactations.size() - 1));
    }

    public Optional<AssembledLactation> ofParity(int parity) {
        return lactations.stream()
                .filter(assembled -> assembled.lactation().parity() == parity)
                .findFirst();
    }
}
