package org.pailbook.benchmarks.projection;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.projection.HerdStandards;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.projection.ReferenceStandards;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** The ways of projecting that are compared; each is given the other cows' lactations and the first tests of the one to project. */
final class ComparedMethods {
    private static final int DAYS = 305;
    private static final LocalDate EVER = LocalDate.of(9999, 1, 1);
    private static final Citation OTHERS = new Citation("the folder's own", 2024, "the other cows", HowKnown.OURS);

    /** Nothing held back, so that the other cows decide the mean. */
    private static final HerdStandards.Rules WIDE =
            new HerdStandards.Rules(new double[] {0.01, 0.01, 0.01, 0.01}, new double[] {2, 2, 2, 2}, 20);

    private final Map<String, LactationStandard> plain = new ConcurrentHashMap<>();
    private final Map<String, HerdStandards> learned = new HashMap<>();
    private final Map<String, HerdKnowledge> known = new HashMap<>();
    private final List<MeasuredLactation> all;

    ComparedMethods(List<MeasuredLactation> all) {
        this.all = all;
    }

    /**
     * A projection of 305-day milk.
     *
     * @param kg projected
     * @param standardErrorKg of it; empty for methods that tell none
     * @param inside 80 and 95 % intervals; empty for methods that leave them to the standard error
     */
    record Projected(double kg, OptionalDouble standardErrorKg, List<Interval> inside) {}

    /** What is to be projected: a lactation of a cow with its first tests only. */
    record Begun(MeasuredLactation whole, Lactation lactation) {
        double[] days() {
            return lactation.testDays().stream()
                    .mapToDouble(test -> lactation.daysInMilk(test.date()))
                    .toArray();
        }

        double[] kg() {
            return lactation.testDays().stream()
                    .mapToDouble(test -> test.milkKg().orElseThrow())
                    .toArray();
        }

        int tests() {
            return lactation.testDays().size();
        }
    }

    /** By name; an empty answer where a method cannot project from so few tests. */
    Map<String, Function<Begun, OptionalProjected>> byName() {
        Map<String, Function<Begun, OptionalProjected>> methods = new LinkedHashMap<>();
        methods.put("best prediction, learned standards", begun -> best(begun, learned(begun, false)));
        methods.put("the same with the cow's earlier lactations", begun -> best(begun, learned(begun, true)));
        methods.put("as the service projects: shipped standards, the other cows as history", this::asTheService);
        methods.put("best prediction, plain standard", begun -> best(begun, plain(begun.whole())));
        methods.put("last-test ratio", this::lastTestRatio);
        methods.put("ratio to the mean curve", this::ratio);
        methods.put("last test held (test interval to 305)", ComparedMethods::held);
        methods.put("own Wood curve", ComparedMethods::ownWood);
        return methods;
    }

    /** A projection or none. */
    record OptionalProjected(Projected projected) {
        static final OptionalProjected NONE = new OptionalProjected(null);

        static OptionalProjected of(double kg) {
            return new OptionalProjected(new Projected(kg, OptionalDouble.empty(), List.of()));
        }
    }

    /** Our own way, the bare number, kg. */
    double learnedKg(Begun begun) {
        return best(begun, learned(begun, false)).projected().kg();
    }

    /**
     * The path of {@code POST /v1/calculate/projections} with the other cows' lactations as history. Where the folder is the open one, the shipped standards were
     * made from it too, the cow among them, which flatters it a little.
     */
    private OptionalProjected asTheService(Begun begun) {
        MeasuredLactation cow = begun.whole();
        HerdKnowledge herd = known.computeIfAbsent(
                cow.animal(),
                animal -> HerdKnowledge.learn(
                        all.stream()
                                .filter(one -> !one.animal().equals(animal))
                                .map(one -> new HerdLactation(one.animal(), one.breed(), one.lactation()))
                                .toList(),
                        EVER));
        Lactation lactation = begun.lactation();
        LocalDate asOf = begun.tests() == 0
                ? lactation.calvingDate()
                : lactation.testDays().get(begun.tests() - 1).date();
        Projection305 projection = herd.method()
                .project(
                        lactation,
                        herd.milkStandard(cow.animal(), cow.breed(), lactation.parity(), lactation.calvingDate()),
                        asOf);
        Figure milk = projection.milk305();
        return new OptionalProjected(new Projected(
                milk.orThrow(),
                OptionalDouble.of(projection.standardErrorKg()),
                List.of(milk.interval(0.80).orElseThrow(), milk.interval(0.95).orElseThrow())));
    }

    private static OptionalProjected best(Begun begun, LactationStandard standard) {
        Projection305 projection = new BestPrediction()
                .withCalibration(IntervalCalibration.NONE)
                .project(
                        begun.lactation(),
                        standard,
                        begun.lactation().calvingDate().plusDays(DAYS + 30));
        return new OptionalProjected(
                new Projected(projection.milk305Kg(), OptionalDouble.of(projection.standardErrorKg()), List.of()));
    }

    private static OptionalProjected held(Begun begun) {
        return begun.tests() == 0
                ? OptionalProjected.NONE
                : OptionalProjected.of(TestIntervalMethod.sumKg(begun.days(), begun.kg(), begun.tests(), DAYS));
    }

    private OptionalProjected ratio(Begun begun) {
        if (begun.tests() == 0) {
            return OptionalProjected.NONE;
        }
        LactationStandard standard = plain(begun.whole());
        double measured = 0;
        double mean = 0;
        for (int i = 0; i < begun.tests(); i++) {
            measured += begun.kg()[i];
            mean += standard.meanKg((int) begun.days()[i]);
        }
        return OptionalProjected.of(standard.meanTotalKg(DAYS) * measured / mean);
    }

    private OptionalProjected lastTestRatio(Begun begun) {
        if (begun.tests() == 0) {
            return OptionalProjected.NONE;
        }
        LactationStandard standard = plain(begun.whole());
        int last = (int) begun.days()[begun.tests() - 1];
        double rest = standard.meanTotalKg(DAYS) - standard.meanTotalKg(last);
        double soFar = TestIntervalMethod.sumKg(begun.days(), begun.kg(), begun.tests(), last);
        return OptionalProjected.of(soFar + begun.kg()[begun.tests() - 1] * rest / standard.meanKg(last));
    }

    private static OptionalProjected ownWood(Begun begun) {
        if (begun.tests() < 4) {
            return OptionalProjected.NONE;
        }
        return LactationCurves.WOOD
                .estimate(begun.days(), begun.kg())
                .curve()
                .map((LactationCurve curve) -> OptionalProjected.of(curve.totalKg(1, DAYS)))
                .orElse(OptionalProjected.NONE);
    }

    private LactationStandard learned(Begun begun, boolean withPast) {
        MeasuredLactation cow = begun.whole();
        int parity = cow.lactation().parity();
        // her own lactations are in the history only to be her past: her standard never learns from them, nor does the
        // curve it starts from
        HerdStandards herd = learned.computeIfAbsent(
                cow.animal(),
                animal -> HerdStandards.learn(
                        all.stream()
                                .map(one -> new HerdLactation(one.animal(), one.breed(), one.lactation()))
                                .toList(),
                        EVER,
                        startingFromOthers(animal),
                        WIDE));
        return withPast
                ? herd.forCowWithHerPast(
                        cow.animal(), cow.breed(), parity, cow.lactation().calvingDate(), LactationTrait.MILK)
                : herd.forCow(cow.animal(), cow.breed(), parity, cow.lactation().calvingDate(), LactationTrait.MILK);
    }

    private ReferenceStandards startingFromOthers(String animal) {
        return (breed, parity, trait) -> trait == LactationTrait.MILK
                ? plain.computeIfAbsent(animal + "/" + breed + (parity == 1), unused -> fit(animal, breed, parity == 1))
                : ReferenceStandards.SHIPPED.forCow(breed, parity, trait);
    }

    /** Wilmink's curve by least squares through the other cows of her breed and parity class, r .998 or .995, e .20. */
    private LactationStandard plain(MeasuredLactation cow) {
        boolean first = cow.lactation().parity() == 1;
        return plain.computeIfAbsent(
                cow.animal() + "/" + cow.breed() + first, unused -> fit(cow.animal(), cow.breed(), first));
    }

    private LactationStandard fit(String withoutAnimal, String breed, boolean first) {
        List<double[]> rows = all.stream()
                .filter(one -> !one.animal().equals(withoutAnimal))
                .filter(one -> one.breed().equals(breed) && (one.lactation().parity() == 1) == first)
                .flatMap(one -> one.lactation().testDays().stream().map((TestDay test) -> new double[] {
                    test.milkKg().orElseThrow(), one.lactation().daysInMilk(test.date())
                }))
                .toList();
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(
                rows.stream().mapToDouble(row -> row[0]).toArray(),
                rows.stream()
                        .map(row -> new double[] {Math.exp(-0.05 * row[1]), row[1]})
                        .toArray(double[][]::new));
        double[] b = regression.estimateRegressionParameters();
        double sd = regression.estimateRegressionStandardError();
        return LactationStandard.of(
                breed + (first ? ", parity 1" : ", parity 2 or more"),
                OTHERS,
                day -> b[0] + b[1] * Math.exp(-0.05 * day) + b[2] * day,
                DailySpread.constant(sd, first ? 0.998 : 0.995, 0.20));
    }
}
