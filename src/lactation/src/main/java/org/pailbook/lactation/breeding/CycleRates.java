package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/** A herd's rates of cycles of 21 days: one by one, of the year, and of the last three with known outcomes. */
public final class CycleRates {
    public static final int LATE_CYCLES = 3;

    private final List<BreedingPeriod> periods;
    private final LocalDate asOf;
    private final PregnancyRate21 rate;

    private CycleRates(List<BreedingPeriod> periods, LocalDate asOf, PregnancyRate21 rate) {
        this.periods = List.copyOf(periods);
        this.asOf = asOf;
        this.rate = rate;
    }

    /**
     * @param periods of all cows, also of those that left
     * @param asOf last day of the last cycle
     * @param cycles how many
     */
    public static CycleRates of(List<BreedingPeriod> periods, int waitingDays, LocalDate asOf, int cycles) {
        return new CycleRates(periods, asOf, PregnancyRate21.of(periods, waitingDays, asOf, cycles));
    }

    /** Of one cycle; no rate while more than a tenth of its cows are pending. */
    public Measured pregnancyRate(PregnancyRate21.Cycle cycle) {
        List<Finding> findings = new ArrayList<>(WhatIsRecorded.of(periods));
        if (findings.isEmpty() && cycle.isPending()) {
            findings.add(Finding.of(FindingCode.OUTCOME_PENDING).withSeen(cycle.pending() + " of " + cycle.eligible()));
        } else {
            findings.addAll(unknown(cycle.pending(), cycle.eligible()));
        }
        return Measured.share(
                BreedingMeasures.PREGNANCY_RATE_21, new Proportion(cycle.pregnant(), cycle.known()), asOf, findings);
    }

    /** Of one cycle. */
    public Measured inseminationRisk(PregnancyRate21.Cycle cycle) {
        return Measured.share(
                BreedingMeasures.INSEMINATION_RISK,
                new Proportion(cycle.served(), cycle.eligible()),
                asOf,
                WhatIsRecorded.services(periods));
    }

    /** Of all cycles of the year that are not pending. */
    public Measured pregnancyRateOfYear() {
        return pregnancyRate(rate.cycles());
    }

    /** Of the last three cycles that are not pending. */
    public Measured pregnancyRateOfLateCycles() {
        List<PregnancyRate21.Cycle> ready =
                rate.cycles().stream().filter(cycle -> !cycle.isPending()).toList();
        return pregnancyRate(ready.subList(Math.max(0, ready.size() - LATE_CYCLES), ready.size()));
    }

    private Measured pregnancyRate(List<PregnancyRate21.Cycle> of) {
        List<PregnancyRate21.Cycle> ready =
                of.stream().filter(cycle -> !cycle.isPending()).toList();
        List<Finding> findings = new ArrayList<>(WhatIsRecorded.of(periods));
        if (ready.size() < of.size()) {
            findings.add(Finding.of(FindingCode.CYCLES_LEFT_OUT)
                    .withSeen((of.size() - ready.size()) + " of " + of.size() + " cycles"));
        }
        findings.addAll(unknown(
                ready.stream().mapToInt(PregnancyRate21.Cycle::pending).sum(),
                ready.stream().mapToInt(PregnancyRate21.Cycle::eligible).sum()));
        int outside = ready.stream()
                .mapToInt(PregnancyRate21.Cycle::pregnantUncounted)
                .sum();
        if (outside > 0) {
            findings.add(Finding.of(FindingCode.OUTSIDE_COUNTED_CYCLES).withSeen(Integer.toString(outside)));
        }
        return Measured.share(
                BreedingMeasures.PREGNANCY_RATE_21,
                new Proportion(
                        ready.stream().mapToInt(PregnancyRate21.Cycle::pregnant).sum(),
                        ready.stream().mapToInt(PregnancyRate21.Cycle::known).sum()),
                asOf,
                findings);
    }

    public Measured inseminationRiskOfYear() {
        return Measured.share(
                BreedingMeasures.INSEMINATION_RISK,
                new Proportion(
                        rate.cycles().stream()
                                .mapToInt(PregnancyRate21.Cycle::served)
                                .sum(),
                        rate.cycles().stream()
                                .mapToInt(PregnancyRate21.Cycle::eligible)
                                .sum()),
                asOf,
                WhatIsRecorded.services(periods));
    }

    /** Per 100 cow-cycles, by days at risk in the cycles that are not pending. */
    public Measured pregnanciesPerCowCycle() {
        List<PregnancyRate21.Cycle> ready =
                rate.cycles().stream().filter(cycle -> !cycle.isPending()).toList();
        return Measured.ratio(
                BreedingMeasures.PREGNANCIES_PER_COW_CYCLE,
                ready.stream()
                        .mapToInt(PregnancyRate21.Cycle::conceptionsAtRisk)
                        .sum(),
                ready.stream().mapToInt(PregnancyRate21.Cycle::cowDays).sum() / (double) PregnancyRate21.CYCLE_DAYS,
                100,
                "per 100 cow-cycles",
                asOf,
                WhatIsRecorded.of(periods));
    }

    static List<Finding> unknown(int pending, int eligible) {
        return pending == 0
                ? List.of()
                : List.of(Finding.of(FindingCode.OUTCOME_UNKNOWN).withSeen(pending + " of " + eligible));
    }

    /** The cycles of the year, in order. */
    public List<PregnancyRate21.Cycle> cycles() {
        return rate.cycles();
    }

    /** Chance of a pregnancy in 21 days at risk, 0 to 1: {@code 1 - (1 - pregnancies / days)^21}. */
    public static double riskByCowDays(int pregnancies, int cowDays) {
        return 1 - Math.pow(1 - (double) pregnancies / cowDays, PregnancyRate21.CYCLE_DAYS);
    }

    /**
     * Cycles a pregnant cow had by her own days: an older way of counting, for comparison with figures made so.
     *
     * @see "California demonstration project, pregnancy rate by eligible cycles (read)"
     */
    public static int cyclesOfPregnantCow(int daysOpen, int waitingDays) {
        return (int) Math.ceil((double) (daysOpen - waitingDays) / PregnancyRate21.CYCLE_DAYS);
    }

    /** Cycles an open cow had so far, counted the same way. */
    public static int cyclesOfOpenCow(int daysSinceCalving, int waitingDays) {
        return (int) Math.round((double) (daysSinceCalving - waitingDays) / PregnancyRate21.CYCLE_DAYS);
    }
}
