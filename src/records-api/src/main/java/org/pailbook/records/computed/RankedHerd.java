package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.MilkByMonth;
import org.pailbook.lactation.culling.MilkLevel;
import org.pailbook.lactation.culling.ParityGroup;
import org.pailbook.lactation.culling.PregnancyState;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.records.store.CowRecord;

/** A herd's cows, in milk or dry, as the value of each needs them: place in the lactation, pregnancy, milk level against her group. */
public final class RankedHerd {
    /** Half an 80 % interval over a standard error, of a normal error. */
    private static final double HALF_80 = 1.2815515655446004;

    private static final int LAST_DAY_OF_MEAN = 305;
    private static final int PARITIES = 5;

    private final List<Candidate> candidates;
    private final HerdKnowledge knowledge;

    /** A cow in milk or dry. */
    public record Candidate(CowRecord record, CowOnDay cow, BreedingRecord breeding, Projection305 projection) {
        public int parity() {
            return latest().lactation().parity();
        }

        AssembledLactation latest() {
            return cow.lactations().latest().orElseThrow();
        }

        boolean isFirst() {
            return parity() == 1;
        }

        double projectedKg() {
            return projection.milk305().orThrow();
        }

        OptionalDouble standardErrorKg() {
            Optional<Interval> interval = projection.milk305().interval(Coverage.EIGHTY_PERCENT.share());
            return interval.isPresent()
                    ? OptionalDouble.of((interval.get().high() - interval.get().low()) / 2 / HALF_80)
                    : OptionalDouble.empty();
        }
    }

    private RankedHerd(List<Candidate> candidates, HerdKnowledge knowledge) {
        this.candidates = candidates;
        this.knowledge = knowledge;
    }

    /**
     * @param bred the herd's animals
     * @param cows the same in the same order, taught what is known of the herd
     */
    static RankedHerd of(List<HerdBreeding.BredCow> bred, List<CowOnDay> cows) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < cows.size(); i++) {
            BreedingRecord record = bred.get(i).breeding();
            candidate(bred.get(i).record(), cows.get(i), () -> record).ifPresent(candidates::add);
        }
        return new RankedHerd(
                candidates, cows.isEmpty() ? HerdKnowledge.none() : cows.get(0).herd());
    }

    /**
     * One of them; empty if she is neither in milk nor dry.
     *
     * @param cow taught what is known of the herd
     * @param breeding read if she is
     */
    static Optional<Candidate> candidate(CowRecord record, CowOnDay cow, Supplier<BreedingRecord> breeding) {
        return cow.state() == CowState.IN_MILK || cow.state() == CowState.DRY
                ? Optional.of(new Candidate(
                        record,
                        cow,
                        breeding.get(),
                        cow.milkProjection(cow.lactations().latest().orElseThrow())))
                : Optional.empty();
    }

    /** The cows by their id. */
    public Map<String, Candidate> byId() {
        return candidates.stream().collect(Collectors.toMap(one -> one.cow().animal(), one -> one));
    }

    /** Whether the herd's own tests are in its curve. */
    boolean hasOwnCurve() {
        return knowledge.lactations() > 0;
    }

    /** Mean projection of the cows with tests, first lactations (true) apart from later ones. */
    Map<Boolean, Double> groupMeanKg() {
        return candidates.stream()
                .filter(one -> one.projection().tests() > 0)
                .collect(Collectors.groupingBy(Candidate::isFirst, Collectors.averagingDouble(Candidate::projectedKg)));
    }

    /** As the library values them, against means of their groups. */
    List<CullingCow> cows(Map<Boolean, Double> groupMeanKg) {
        return candidates.stream().map(one -> cow(one, groupMeanKg)).toList();
    }

    static CullingCow cow(Candidate one, Map<Boolean, Double> groupMeanKg) {
        CullingCow cow = CullingCow.of(
                one.cow().animal(),
                one.parity(),
                one.latest().lactation().calvingDate(),
                PregnancyState.ofRecord(one.breeding()),
                level(one, groupMeanKg.get(one.isFirst())));
        return one.breeding().now().notToBeBred().isPresent() ? cow.notToBeBred() : cow;
    }

    private static MilkLevel level(Candidate one, Double groupMeanKg) {
        return one.projection().tests() == 0 || groupMeanKg == null || groupMeanKg <= 0
                ? MilkLevel.NOT_KNOWN
                : MilkLevel.ofProjection(
                        one.projectedKg(),
                        groupMeanKg,
                        one.standardErrorKg(),
                        one.projection().tests());
    }

    /** The reference set with the curves of the herd's commonest breed, as learned from its tests. */
    HerdParameters parameters(LocalDate asOf) {
        String breed = candidates.stream()
                .map(one -> one.cow().breed())
                .collect(Collectors.groupingBy(name -> name, Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.<String, Long>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .map(Map.Entry::getKey)
                .orElse("");
        List<ParityGroup> groups = IntStream.rangeClosed(1, PARITIES)
                .mapToObj(parity -> {
                    ParityGroup reference = HerdParameters.REFERENCE.group(parity);
                    LactationStandard standard = knowledge.milkStandard("", breed, parity, asOf);
                    return new ParityGroup(
                            MilkByMonth.ofMeanTo(standard::meanKg, Math.min(LAST_DAY_OF_MEAN, standard.lastDay())),
                            reference.bodyWeightKg(),
                            reference.unplannedExitSharePerMonth(),
                            reference.pregnancyRate21DayShare());
                })
                .toList();
        return HerdParameters.REFERENCE.withGroups(groups);
    }
}
