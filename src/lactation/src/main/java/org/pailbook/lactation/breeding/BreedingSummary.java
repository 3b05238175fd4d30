package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * How well a herd gets in calf, over the 365 days to a day (17 cycles of 21 days for the rates), each measure by its definition in {@link
 * BreedingMeasures}.
 *
 * @param from first day looked at
 * @param cycles rates of cycles of 21 days
 * @param outcomes of services and pregnancies
 * @param intervals days from calving to service, conception and calving
 * @param findings what is missing of the herd as a whole
 */
public record BreedingSummary(
        LocalDate from,
        CycleRates cycles,
        ServiceOutcomes outcomes,
        BreedingIntervals intervals,
        List<Finding> findings) {
    public static final int YEAR_DAYS = 365;
    public static final int CYCLES_OF_A_YEAR = 17;

    public BreedingSummary {
        findings = List.copyOf(findings);
    }

    /** @param cows all animals of the herd as they were on the day, also those that left */
    public static BreedingSummary of(List<BreedingRecord> cows, BreedingSettings settings, LocalDate asOf) {
        List<BreedingPeriod> periods =
                cows.stream().flatMap(cow -> cow.periods().stream()).toList();
        LocalDate from = asOf.minusDays(YEAR_DAYS - 1L);
        List<Finding> findings = new ArrayList<>();
        if (settings.ownWaitingDays().isEmpty()) {
            findings.add(Finding.of(FindingCode.WAITING_PERIOD_ASSUMED).withSeen(settings.waitingDays() + " days"));
        }
        findings.addAll(WhatIsRecorded.of(periods));
        return new BreedingSummary(
                from,
                CycleRates.of(periods, settings.waitingDays(), asOf, CYCLES_OF_A_YEAR),
                new ServiceOutcomes(periods, settings, from, asOf),
                new BreedingIntervals(cows, settings, from, asOf),
                findings);
    }
}
