package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.projection.HerdStandards;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.PastProjections;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.projection.ProjectionError;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What a herd's own history tells of a cow before her tests do: the standards of its groups, and how far its past projections were off.
 *
 * <p>Learned from every lactation with a usable test up to a day. A cow's own lactations take no part in her own standard. Projections of completed
 * lactations are made again as they stood and held against what came of them; from {@value #LEAST_COMPLETED} lactations on the herd's own
 * errors make the intervals, before that those of the shipped calibration stand. Of a large herd the last {@value #MOST_COMPLETED} completed lactations
 * are looked at. These two numbers are rules of ours. Immutable; many threads may use one.
 */
public final class HerdKnowledge {
    /** From so many on, a herd's own errors count for at least half in its calibration. */
    static final int LEAST_COMPLETED = 50;

    static final int MOST_COMPLETED = 1000;

    /** Lactations with more tests than this are not projected anew. */
    private static final int MOST_TESTS = 30;

    private static final HerdKnowledge NONE = learn(List.of(), LocalDate.EPOCH);

    private final HerdStandards standards;
    private final Counts all;
    private final Map<String, Counts> ofAnimal;
    private final List<ProjectionError> errors;
    private final int completed;
    private final BestPrediction method;
    private final IntervalCalibration calibration;

    private record Counts(int lactations, int tests) {
        Counts plus(Counts other) {
            return new Counts(lactations + other.lactations, tests + other.tests);
        }
    }

    private HerdKnowledge(HerdStandards standards, Map<String, Counts> ofAnimal, List<ProjectionError> errors) {
        this.standards = standards;
        this.ofAnimal = ofAnimal;
        this.all = ofAnimal.values().stream().reduce(new Counts(0, 0), Counts::plus);
        this.errors = errors;
        this.completed =
                (int) errors.stream().filter(error -> error.tests() == 0).count();
        this.calibration =
                completed >= LEAST_COMPLETED ? IntervalCalibration.learn(errors) : IntervalCalibration.OPEN_DATA;
        this.method = new BestPrediction().withCalibration(calibration);
    }

    /** Nothing known of the herd: the shipped reference, and how far herds differ from it. */
    public static HerdKnowledge none() {
        return NONE;
    }

    /**
     * @param history lactations of the herd, ended or not, of any cows
     * @param asOf later tests take no part
     */
    public static HerdKnowledge learn(List<HerdLactation> history, LocalDate asOf) {
        Map<String, Counts> counts = new HashMap<>();
        for (HerdLactation one : history) {
            int tests = UsableTests.of(one.lactation(), asOf).count();
            if (tests > 0) {
                counts.merge(one.animal(), new Counts(1, tests), Counts::plus);
            }
        }
        HerdStandards standards = HerdStandards.learn(history, asOf);
        return new HerdKnowledge(standards, counts, errorsOfLate(history, standards, asOf));
    }

    private static List<ProjectionError> errorsOfLate(
            List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        List<HerdLactation> latestFirst = history.stream()
                .sorted(Comparator.comparing(
                                (HerdLactation one) -> one.lactation().calvingDate())
                        .reversed())
                .toList();
        List<ProjectionError> errors = new ArrayList<>();
        int completed = 0;
        for (HerdLactation one : latestFirst) {
            // a weight every day makes as many projections as days, each slow: not what a calibration for few tests
            // needs
            if (completed < MOST_COMPLETED
                    && UsableTests.of(one.lactation(), asOf).count() <= MOST_TESTS) {
                List<ProjectionError> ofOne = PastProjections.of(List.of(one), standards, asOf);
                errors.addAll(ofOne);
                completed += ofOne.isEmpty() ? 0 : 1;
            }
        }
        return errors;
    }

    /** Learns from cows as they were on a day. */
    public static HerdKnowledge ofCows(List<CowOnDay> cows, LocalDate asOf) {
        return learn(
                cows.stream()
                        .flatMap(cow -> cow.lactations().lactations().stream()
                                .map(one -> new HerdLactation(cow.animal(), cow.breed(), one.lactation())))
                        .toList(),
                asOf);
    }

    /** The standards of a cow for milk, fat, protein and cell score, without anything learned from herself. */
    public TraitStandards standards(String animal, String breed, int parity) {
        return TraitStandards.ofYields(
                        milkStandard(animal, breed, parity),
                        standards.forCow(animal, breed, parity, LactationTrait.FAT),
                        standards.forCow(animal, breed, parity, LactationTrait.PROTEIN),
                        LactationStandards.correlations())
                .withCells(told(animal, standards.forCow(animal, breed, parity, LactationTrait.CELLS)));
    }

    /** The milk standard of a cow, without anything learned from herself. */
    public LactationStandard milkStandard(String animal, String breed, int parity) {
        return told(animal, standards.forCow(animal, breed, parity, LactationTrait.MILK));
    }

    private LactationStandard told(String animal, LactationStandard standard) {
        Counts own = ofAnimal.getOrDefault(animal, new Counts(0, 0));
        int lactations = all.lactations() - own.lactations();
        return lactations == 0
                ? standard
                : standard.withFinding(Finding.of(FindingCode.STANDARD_LEARNED)
                        .withSeen(lactations + " lactations, " + (all.tests() - own.tests()) + " test days"));
    }

    /** Best prediction with intervals as wide as this herd needs them. */
    public BestPrediction method() {
        return method;
    }

    /** What the intervals of this herd were widened or narrowed with. */
    public IntervalCalibration calibration() {
        return calibration;
    }

    /** Whether the intervals come from this herd's own errors; else they are as shipped. */
    public boolean isCalibratedByHerd() {
        return completed >= LEAST_COMPLETED;
    }

    /** Past projections of completed lactations beside what came of them, by number of tests; empty while none is completed. */
    public ProjectionAccuracy accuracy() {
        return ProjectionAccuracy.of(errors, calibration);
    }

    /** Completed lactations that {@link #accuracy()} is made from. */
    public int completedLactations() {
        return completed;
    }

    /** Lactations with a usable test that the standards learned from. */
    public int lactations() {
        return all.lactations();
    }

    /** Usable test days that the standards learned from. */
    public int testDays() {
        return all.tests();
    }
}
