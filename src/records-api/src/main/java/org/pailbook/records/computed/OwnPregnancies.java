package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.pailbook.lactation.breeding.BreedingPeriod;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingSummary;
import org.pailbook.lactation.breeding.CycleRates;
import org.pailbook.lactation.breeding.PregnancyRate21;
import org.pailbook.lactation.culling.HerdExperience;
import org.pailbook.lactation.culling.HerdParameters;

/** How a herd's cows of each parity got in calf in the year to a day. Exits stay reference: those recorded do not say which were chosen. */
final class OwnPregnancies {
    private static final int PARITIES = 5;
    private static final double PERCENT = 100;

    private final List<HerdExperience> byParity;

    private OwnPregnancies(List<HerdExperience> byParity) {
        this.byParity = byParity;
    }

    /** Nothing is learned where services or checks are not recorded: no pregnancy on record is not no pregnancy. */
    static OwnPregnancies of(List<HerdBreeding.BredCow> cows, BreedingSettings settings, LocalDate asOf) {
        List<BreedingPeriod> periods =
                cows.stream().flatMap(cow -> cow.breeding().periods().stream()).toList();
        boolean isKnown = rates(periods, settings, asOf)
                .pregnancyRateOfYear()
                .figure()
                .value()
                .isPresent();
        return new OwnPregnancies(IntStream.rangeClosed(1, PARITIES)
                .mapToObj(parity -> isKnown
                        ? experience(
                                periods.stream()
                                        .filter(period -> Math.min(PARITIES, period.parity()) == parity)
                                        .toList(),
                                settings,
                                asOf)
                        : HerdExperience.NONE)
                .toList());
    }

    private static CycleRates rates(List<BreedingPeriod> periods, BreedingSettings settings, LocalDate asOf) {
        return CycleRates.of(periods, settings.waitingDays(), asOf, BreedingSummary.CYCLES_OF_A_YEAR);
    }

    private static HerdExperience experience(List<BreedingPeriod> periods, BreedingSettings settings, LocalDate asOf) {
        List<PregnancyRate21.Cycle> known = rates(periods, settings, asOf).cycles().stream()
                .filter(cycle -> !cycle.isPending())
                .toList();
        return HerdExperience.ofPregnancies(
                known.stream().mapToInt(PregnancyRate21.Cycle::pregnant).sum(),
                known.stream().mapToInt(PregnancyRate21.Cycle::known).sum());
    }

    HerdParameters appliedTo(HerdParameters reference) {
        return reference.withGroups(IntStream.rangeClosed(1, PARITIES)
                .mapToObj(parity ->
                        byParity.get(parity - 1).appliedTo(reference.group(parity), reference.freshExitFactor()))
                .toList());
    }

    /** What of a parity's figures is of the reference set alone. */
    List<AssumedView> assumed(int parity, HerdParameters parameters) {
        List<AssumedView> all = AssumedView.ofGroup("/parity " + parity, parameters.group(parity));
        return byParity.get(parity - 1).eligibleCycles() == 0
                ? all
                : all.stream()
                        .filter(one -> !one.pointer().endsWith("/pregnancyRate21DayPct"))
                        .toList();
    }

    /** Parities of which something is known. */
    List<OwnPregnanciesView> views(HerdParameters parameters) {
        return IntStream.rangeClosed(1, PARITIES)
                .filter(parity -> byParity.get(parity - 1).eligibleCycles() > 0)
                .mapToObj(parity -> {
                    HerdExperience own = byParity.get(parity - 1);
                    return new OwnPregnanciesView(
                            parity,
                            own.pregnancies(),
                            own.eligibleCycles(),
                            PERCENT * own.pregnancyWeight(),
                            PERCENT * parameters.group(parity).pregnancyRate21DayShare());
                })
                .toList();
    }
}
