package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.finding.Finding;

/** What came of a herd's services over the year to a day, and of the pregnancies found. */
public final class ServiceOutcomes {
    private final List<BreedingPeriod> periods;
    private final BreedingSettings settings;
    private final LocalDate from;
    private final LocalDate asOf;

    ServiceOutcomes(List<BreedingPeriod> periods, BreedingSettings settings, LocalDate from, LocalDate asOf) {
        this.periods = List.copyOf(periods);
        this.settings = settings;
        this.from = from;
        this.asOf = asOf;
    }

    /** Of services old enough to have been checked. */
    public Measured conceptionRisk() {
        int took = countServices(Outcome.PREGNANT);
        int known = took + countServices(Outcome.OPEN);
        List<Finding> findings = new ArrayList<>(WhatIsRecorded.of(periods));
        int unknown = countServices(Outcome.UNKNOWN);
        findings.addAll(CycleRates.unknown(unknown, known + unknown));
        return Measured.share(BreedingMeasures.CONCEPTION_RISK, new Proportion(took, known), asOf, findings);
    }

    /** All services whose outcome is known for each conception: one over the conception risk. */
    public Measured servicesPerConceptionStrict() {
        int took = countServices(Outcome.PREGNANT);
        return Measured.ratio(
                BreedingMeasures.SERVICES_PER_CONCEPTION_STRICT,
                took + countServices(Outcome.OPEN),
                took,
                1,
                "services",
                asOf,
                WhatIsRecorded.of(periods));
    }

    private int countServices(Outcome outcome) {
        LocalDate to = asOf.minusDays(settings.checkDays());
        return (int) periods.stream()
                .flatMap(period -> period.services().stream())
                .filter(service -> service.outcome() == outcome)
                .filter(service ->
                        !service.date().isBefore(from) && !service.date().isAfter(to))
                .count();
    }

    /** Services of cows that conceived in the year, for each conception. */
    public Measured servicesPerConception() {
        int services = 0;
        int conceptions = 0;
        for (BreedingPeriod period : periods) {
            for (Pregnancy pregnancy : period.pregnancies()) {
                Optional<LocalDate> day = pregnancy.conception().filter(this::isInYear);
                boolean served = day.isPresent()
                        && period.services().stream()
                                .anyMatch(service -> service.date().equals(day.get()));
                if (served) {
                    conceptions++;
                    services += (int) period.services().stream()
                            .filter(service -> !service.date().isAfter(day.get()))
                            .count();
                }
            }
        }
        return Measured.ratio(
                BreedingMeasures.SERVICES_PER_CONCEPTION,
                services,
                conceptions,
                1,
                "services",
                asOf,
                WhatIsRecorded.of(periods));
    }

    public Measured pregnancyLoss() {
        List<Pregnancy> found = periods.stream()
                .flatMap(period -> period.pregnancies().stream())
                .filter(pregnancy ->
                        pregnancy.confirmedOn().filter(this::isInYear).isPresent())
                .toList();
        int lost = (int) found.stream()
                .filter(pregnancy -> pregnancy.lostOn().isPresent())
                .count();
        return Measured.share(
                BreedingMeasures.PREGNANCY_LOSS, new Proportion(lost, found.size()), asOf, WhatIsRecorded.of(periods));
    }

    private boolean isInYear(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(asOf);
    }
}
