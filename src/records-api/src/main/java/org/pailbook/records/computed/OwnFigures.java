package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.pailbook.lactation.breeding.BreedingPeriod;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingSummary;
import org.pailbook.lactation.breeding.CycleRates;
import org.pailbook.lactation.breeding.PregnancyRate21;
import org.pailbook.lactation.culling.ExitExperience;
import org.pailbook.lactation.culling.HerdExperience;
import org.pailbook.lactation.culling.HerdParameters;

/** How a herd's cows of each parity got in calf and left unplanned, in the year to a day. */
final class OwnFigures {
    private static final int PARITIES = 5;
    private static final double PERCENT = 100;

    private final List<HerdExperience> byParity;

    private OwnFigures(List<HerdExperience> byParity) {
        this.byParity = byParity;
    }

    /**
     * Nothing is learned where services or checks are not recorded: no pregnancy on record is not no pregnancy.
     *
     * @param exits empty where none are recorded
     */
    static OwnFigures of(
            List<HerdBreeding.BredCow> cows,
            BreedingSettings settings,
            Optional<ExitExperience> exits,
            LocalDate asOf) {
        List<BreedingPeriod> periods =
                cows.stream().flatMap(cow -> cow.breeding().periods().stream()).toList();
        boolean isKnown = rates(periods, settings, asOf)
                .pregnancyRateOfYear()
                .figure()
                .value()
                .isPresent();
        List<HerdExperience> pregnancies = IntStream.rangeClosed(1, PARITIES)
                .mapToObj(parity -> isKnown
                        ? experience(
                                periods.stream()
                                        .filter(period -> Math.min(PARITIES, period.parity()) == parity)
                                        .toList(),
                                settings,
                                asOf)
                        : HerdExperience.NONE)
                .toList();
        return new OwnFigures(exits.map(own -> own.with(pregnancies)).orElse(pregnancies));
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
        HerdExperience own = byParity.get(parity - 1);
        return AssumedView.ofGroup("/parity " + parity, parameters.group(parity)).stream()
                .filter(one -> own.eligibleCycles() == 0 || !one.pointer().endsWith("/pregnancyRate21DayPct"))
                .filter(one -> own.exitWeight() == 0 || !one.pointer().endsWith("/unplannedExitPctPerMonth"))
                .toList();
    }

    /** Parities of whose pregnancies something is known. */
    List<OwnPregnanciesView> pregnancies(HerdParameters parameters) {
        return ofKnown(
                own -> own.eligibleCycles() > 0,
                (parity, own) -> new OwnPregnanciesView(
                        parity,
                        own.pregnancies(),
                        own.eligibleCycles(),
                        PERCENT * own.pregnancyWeight(),
                        PERCENT * parameters.group(parity).pregnancyRate21DayShare()));
    }

    /** Parities of whose exits something is known. */
    List<OwnExitsView> exits(HerdParameters parameters) {
        return ofKnown(
                own -> own.exitWeight() > 0,
                (parity, own) -> new OwnExitsView(
                        parity,
                        own.exits(),
                        own.freshCowMonths() + own.laterCowMonths(),
                        PERCENT * own.exitWeight(),
                        PERCENT * parameters.group(parity).unplannedExitSharePerMonth()));
    }

    private <V> List<V> ofKnown(Predicate<HerdExperience> isKnown, BiFunction<Integer, HerdExperience, V> view) {
        return IntStream.rangeClosed(1, PARITIES)
                .filter(parity -> isKnown.test(byParity.get(parity - 1)))
                .mapToObj(parity -> view.apply(parity, byParity.get(parity - 1)))
                .toList();
    }
}
