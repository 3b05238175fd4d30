package org.pailbook.benchmarks.accuracy;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.projection.HerdStandards;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.ReferenceStandards;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.Lactation;

/** The rules compared: ours in three dresses, then the simple ones. */
final class ProjectionRules {
    private static final LocalDate LATER = LocalDate.of(2100, 1, 1);
    private static final int DAYS = 305;

    /** The reference is made from the other cows too, so the data decide: the mean may lie two standard deviations off in any shape. */
    private static final HerdStandards.Rules WIDE =
            new HerdStandards.Rules(new double[] {0.01, 0.01, 0.01, 0.01}, new double[] {2, 2, 2, 2}, 20);

    private ProjectionRules() {}

    private record Named(String name, Function<List<KnownLactation>, Taught> teaching) implements ProjectionRule {
        @Override
        public Taught learn(List<KnownLactation> others) {
            return teaching.apply(others);
        }
    }

    static List<ProjectionRule> all() {
        return List.of(
                new Named("ours, all learned from the other cows", ProjectionRules::learned),
                new Named("ours, as shipped with the other cows as history", ProjectionRules::shipped),
                new Named("ours, as shipped without history", others -> shipped(List.of())),
                new Named("last test held for 305 days", others -> withTests(l -> DAYS * lastKg(l))),
                new Named("test interval, last test carried on", others -> withTests(ProjectionRules::carried)),
                new Named("ratio to the mean curve of the class", ProjectionRules::ratio),
                new Named("own Wood fit", others -> ProjectionRules::wood));
    }

    private static ProjectionRule.Taught learned(List<KnownLactation> others) {
        Map<String, LactationStandard> made = new HashMap<>();
        ReferenceStandards fromOthers = ClassCurve.reference(others);
        ReferenceStandards once = (breed, parity, trait) ->
                made.computeIfAbsent(breed + (parity == 1) + trait, unused -> fromOthers.forCow(breed, parity, trait));
        HerdStandards herd = HerdStandards.learn(history(others), LATER, once, WIDE);
        BestPrediction method = new BestPrediction().withCalibration(IntervalCalibration.OPEN_DATA);
        return (animal, breed, lactation) -> answer(
                method.project(lactation, herd.forCow(animal, breed, lactation.parity(), LactationTrait.MILK), LATER)
                        .milk305());
    }

    private static ProjectionRule.Taught shipped(List<KnownLactation> others) {
        HerdKnowledge herd = HerdKnowledge.learn(history(others), LATER);
        return (animal, breed, lactation) -> answer(herd.method()
                .project(lactation, herd.milkStandard(animal, breed, lactation.parity()), LATER)
                .milk305());
    }

    private static List<HerdLactation> history(List<KnownLactation> others) {
        return others.stream()
                .map(one -> new HerdLactation(one.animal(), one.breed(), one.lactation()))
                .toList();
    }

    private static Optional<ProjectionRule.Answer> answer(Figure figure) {
        return Optional.of(new ProjectionRule.Answer(figure.orThrow(), figure.interval(0.80), figure.interval(0.95)));
    }

    private static ProjectionRule.Taught withTests(Function<Lactation, Double> kg) {
        return (animal, breed, lactation) ->
                lactation.testDays().isEmpty() ? Optional.empty() : ProjectionRule.Answer.bare(kg.apply(lactation));
    }

    private static double[] days(Lactation lactation) {
        return lactation.testDays().stream()
                .mapToDouble(test -> lactation.daysInMilk(test.date()))
                .toArray();
    }

    private static double[] milkKg(Lactation lactation) {
        return lactation.testDays().stream()
                .mapToDouble(test -> test.milkKg().orElseThrow())
                .toArray();
    }

    private static double lastKg(Lactation lactation) {
        double[] kg = milkKg(lactation);
        return kg[kg.length - 1];
    }

    private static double carried(Lactation lactation) {
        double[] days = days(lactation);
        double last = days[days.length - 1];
        return TestIntervalMethod.sumKg(days, milkKg(lactation), days.length, last) + (DAYS - last) * lastKg(lactation);
    }

    private static ProjectionRule.Taught ratio(List<KnownLactation> others) {
        Map<String, ClassCurve> curves = new HashMap<>();
        return (animal, breed, lactation) -> {
            ClassCurve curve = curves.computeIfAbsent(
                    breed + (lactation.parity() == 1),
                    unused -> ClassCurve.of(others, breed, lactation.parity() == 1, LactationTrait.MILK));
            double measured = 0;
            double expected = 0;
            double[] kg = milkKg(lactation);
            double[] days = days(lactation);
            for (int i = 0; i < kg.length; i++) {
                measured += kg[i];
                expected += curve.on((int) days[i]);
            }
            double total = curve.total(1, DAYS);
            return ProjectionRule.Answer.bare(kg.length == 0 ? total : total * measured / expected);
        };
    }

    private static Optional<ProjectionRule.Answer> wood(String animal, String breed, Lactation lactation) {
        return LactationCurves.WOOD
                .fit(lactation, LATER)
                .curve()
                .flatMap(curve -> ProjectionRule.Answer.bare(curve.totalKg(1, DAYS)));
    }
}
