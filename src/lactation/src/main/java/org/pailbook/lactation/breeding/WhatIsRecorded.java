package org.pailbook.lactation.breeding;

import java.util.List;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/** What a herd's record lacks for a measure: services, or what came of them. */
final class WhatIsRecorded {
    private WhatIsRecorded() {}

    /** What is not on record at all: services, or what came of them. */
    static List<Finding> of(List<BreedingPeriod> periods) {
        boolean anyFound = periods.stream()
                .flatMap(period -> period.pregnancies().stream())
                .anyMatch(pregnancy -> pregnancy.confirmedOn().isPresent());
        if (!anyFound && periods.stream().allMatch(period -> period.services().isEmpty())) {
            return List.of(Finding.of(FindingCode.SERVICES_NEEDED));
        }
        boolean anyKnown = anyFound
                || periods.stream()
                        .flatMap(period -> period.services().stream())
                        .anyMatch(service -> service.outcome() != Outcome.UNKNOWN);
        return anyKnown ? List.of() : List.of(Finding.of(FindingCode.PREGNANCY_CHECKS_NEEDED));
    }

    static List<Finding> services(List<BreedingPeriod> periods) {
        return of(periods).stream()
                .filter(finding -> finding.code() == FindingCode.SERVICES_NEEDED)
                .toList();
    }
}
