package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.projection.HerdLearned;
import org.pailbook.lactation.projection.HerdStandards;
import org.pailbook.lactation.projection.HerdTestDays;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.PastProjections;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.projection.ProjectionError;
import org.pailbook.lactation.projection.TestDayEffects;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What a herd's own history tells of a cow before her tests do: the standards of its groups, and how far its past projections were off.
 *
 * <p>Learned from every lactation with a usable test up to a day. A cow's own lactations take no part in the standard of her group; her
 * earlier ones tell of herself, and that is said. Projections of completed
 * lactations are made again as they stood and held against what came of them, and make the intervals wider or narrower, n of them with weight n /
 * (n + 50) against the shipped calibration; fewer than {@value #LEAST_COMPLETED} leave it as shipped, for a cow's own past errors are among
 * them. Of a large herd the last {@value #MOST_COMPLETED} completed lactations are looked at. These numbers are rules of ours. Immutable; many
 * threads may use one.
 */
public final class HerdKnowledge {
    /** Of fewer a single cow would be too large a part. */
    static final int LEAST_COMPLETED = 10;

    static final int MOST_COMPLETED = 1000;

    /** Groups of cows that take turns in being judged by the others. */
    private static final int GROUPS = 5;

    /** Lactations with more tests than this are not projected anew. */
    private static final int MOST_TESTS = 30;

    private static final HerdKnowledge NONE = learn(List.of(), LocalDate.EPOCH);

    private final HerdStandards standards;
    private final HerdTestDays days;
    private final Counts all;
    private final Map<String, Counts> ofAnimal;
    /** errors of cows dealt out to {@link #GROUPS} groups, all of one cow in the same */
    private final List<List<ProjectionError>> errors;

    private final int completed;
    private final BestPrediction method;
    private final IntervalCalibration calibration;

    private record Counts(int lactations, int tests) {
        Counts plus(Counts other) {
            return new Counts(lactations + other.lactations, tests + other.tests);
        }
    }

    private HerdKnowledge(
            HerdStandards standards,
            HerdTestDays days,
            Map<String, Counts> ofAnimal,
            List<List<ProjectionError>> errors) {
        this.standards = standards;
        this.days = days;
        this.ofAnimal = ofAnimal;
        this.all = ofAnimal.values().stream().reduce(new Counts(0, 0), Counts::plus);
        this.errors = errors;
        this.completed = (int) errors.stream()
                .flatMap(List::stream)
                .filter(error -> error.tests() == 0)
                .count();
        this.calibration =
                isCalibratedByHerd() ? IntervalCalibration.learn(without(errors, -1)) : IntervalCalibration.OPEN_DATA;
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
        HerdLearned learned = HerdLearned.from(history, asOf);
        return new HerdKnowledge(
                learned.standards(),
                learned.days(),
                counts,
                errorsOfLate(learned.history(), learned.standards(), asOf));
    }

    private static List<ProjectionError> without(List<List<ProjectionError>> groups, int leftOut) {
        return IntStream.range(0, groups.size())
                .filter(group -> group != leftOut)
                .boxed()
                .flatMap(group -> groups.get(group).stream())
                .toList();
    }

    private static List<List<ProjectionError>> errorsOfLate(
            List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        List<HerdLactation> latestFirst = history.stream()
                .sorted(Comparator.comparing(
                                (HerdLactation one) -> one.lactation().calvingDate())
                        .reversed())
                .toList();
        List<List<ProjectionError>> errors = new ArrayList<>();
        IntStream.range(0, GROUPS).forEach(group -> errors.add(new ArrayList<>()));
        Map<String, Integer> groupOfCow = new HashMap<>();
        int completed = 0;
        for (HerdLactation one : latestFirst) {
            // a weight every day makes as many projections as days, each slow: not what a calibration for few tests
            // needs
            if (completed < MOST_COMPLETED
                    && PastProjections.mayBeCompleted(one.lactation(), asOf)
                    && UsableTests.of(one.lactation(), asOf).count() <= MOST_TESTS) {
                List<ProjectionError> ofOne = PastProjections.of(List.of(one), standards, asOf);
                if (!ofOne.isEmpty()) {
                    int group = groupOfCow.computeIfAbsent(one.animal(), unused -> groupOfCow.size() % GROUPS);
                    errors.get(group).addAll(ofOne);
                    completed++;
                }
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

    /**
     * The standards of a cow for milk, fat, protein and cell score: her group's without anything learned from herself, moved by the herd's calving season
     * and by her own earlier lactations, which is said in findings.
     *
     * @param calvingDate of the lactation to be projected
     */
    public TraitStandards standards(String animal, String breed, int parity, LocalDate calvingDate) {
        return TraitStandards.ofYields(
                        milkStandard(animal, breed, parity, calvingDate),
                        standard(animal, breed, parity, calvingDate, LactationTrait.FAT),
                        standard(animal, breed, parity, calvingDate, LactationTrait.PROTEIN),
                        LactationStandards.correlations())
                .withCells(told(animal, standard(animal, breed, parity, calvingDate, LactationTrait.CELLS)));
    }

    /** The milk standard among them. */
    public LactationStandard milkStandard(String animal, String breed, int parity, LocalDate calvingDate) {
        return told(animal, standard(animal, breed, parity, calvingDate, LactationTrait.MILK));
    }

    private LactationStandard standard(
            String animal, String breed, int parity, LocalDate calvingDate, LactationTrait trait) {
        return standards.forCowWithHerPast(animal, breed, parity, calvingDate, trait);
    }

    private LactationStandard told(String animal, LactationStandard standard) {
        Counts own = ofAnimal.getOrDefault(animal, new Counts(0, 0));
        int lactations = all.lactations() - own.lactations();
        return lactations == 0
                ? standard
                : standard.withFinding(Finding.of(FindingCode.STANDARD_LEARNED)
                        .withSeen(SentenceCode.LACTATIONS_AND_TEST_DAYS, lactations, all.tests() - own.tests()));
    }

    /**
     * A cow's lactation projected in milk, fat, protein and cell score from {@link #standards}, with what a striking test day had in common for the
     * other cows taken out of her weights and said.
     *
     * @param asOf later tests take no part
     */
    public Projection305 project(String animal, String breed, Lactation lactation, LocalDate asOf) {
        TraitStandards standards = standards(animal, breed, lactation.parity(), lactation.calvingDate());
        TestDayEffects effects = strikingDays(animal, lactation);
        if (effects.isEmpty()) {
            return method.project(lactation, standards, asOf);
        }
        LactationStandard milk = standards.first();
        LactationStandard said = saying(effects.findings(lactation.asOf(asOf), milk), milk);
        TraitStandards saying = TraitStandards.ofYields(
                        said, standards.standard(1), standards.standard(2), LactationStandards.correlations())
                .withCells(standards.cells().orElseThrow());
        return method.project(effects.takenOutOf(lactation, milk), saying, asOf);
    }

    /** The same with milk only. */
    public Projection305 projectMilk(String animal, String breed, Lactation lactation, LocalDate asOf) {
        LactationStandard milk = milkStandard(animal, breed, lactation.parity(), lactation.calvingDate());
        TestDayEffects effects = strikingDays(animal, lactation);
        return effects.isEmpty()
                ? method.project(lactation, milk, asOf)
                : method.project(
                        effects.takenOutOf(lactation, milk),
                        saying(effects.findings(lactation.asOf(asOf), milk), milk),
                        asOf);
    }

    /** As the other cows tell them; nearly always none. */
    private TestDayEffects strikingDays(String animal, Lactation lactation) {
        return days.hasAny(lactation.testDays()) ? days.withoutCow(animal).striking() : TestDayEffects.NONE;
    }

    private static LactationStandard saying(List<Finding> findings, LactationStandard standard) {
        LactationStandard said = standard;
        for (Finding finding : findings) {
            said = said.withFinding(finding);
        }
        return said;
    }

    /** Best prediction with intervals as wide as this herd needs them. */
    public BestPrediction method() {
        return method;
    }

    /** What the intervals of this herd were widened or narrowed with. */
    public IntervalCalibration calibration() {
        return calibration;
    }

    /** Whether this herd's own errors take part in its intervals; else they are as shipped. */
    public boolean isCalibratedByHerd() {
        return completed >= LEAST_COMPLETED;
    }

    /**
     * Past projections of completed lactations beside what came of them, by number of tests; empty while none is completed.
     *
     * <p>Whether a truth lay inside its interval is judged with intervals learned from the lactations of other cows, in {@value #GROUPS}
     * groups: judged by its own errors, any herd's calibration would look right.
     */
    public ProjectionAccuracy accuracy() {
        ProjectionAccuracy all = ProjectionAccuracy.of(without(errors, -1), calibration);
        if (!isCalibratedByHerd()) {
            return all;
        }
        Map<Integer, double[]> inside = new HashMap<>();
        for (int group = 0; group < GROUPS; group++) {
            IntervalCalibration ofOthers = IntervalCalibration.learn(without(errors, group));
            for (ProjectionAccuracy.Row row :
                    ProjectionAccuracy.of(errors.get(group), ofOthers).rows()) {
                double[] sum = inside.computeIfAbsent(row.tests(), unused -> new double[2]);
                sum[0] += row.lactations() * row.coverage80Share();
                sum[1] += row.lactations() * row.coverage95Share();
            }
        }
        return new ProjectionAccuracy(all.rows().stream()
                .map(row -> withCoverage(row, inside.get(row.tests())))
                .toList());
    }

    private static ProjectionAccuracy.Row withCoverage(ProjectionAccuracy.Row row, double[] inside) {
        return new ProjectionAccuracy.Row(
                row.tests(),
                row.lactations(),
                row.meanTrueKg(),
                row.biasKg(),
                row.errorSdKg(),
                row.meanAbsoluteErrorKg(),
                row.rootMeanSquareErrorKg(),
                row.correlation(),
                inside[0] / row.lactations(),
                inside[1] / row.lactations(),
                row.errorRatio());
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
