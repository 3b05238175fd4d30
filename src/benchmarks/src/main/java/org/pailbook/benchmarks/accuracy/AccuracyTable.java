package org.pailbook.benchmarks.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.pailbook.lactation.figure.Interval;

/**
 * Prints, for each rule and number of tests, how far its projections of 305-day milk were from the truth: number of lactations, bias (projection
 * less truth), standard deviation, mean absolute error, that in percent of the mean truth, correlation, and the share of truths inside the 80
 * and the 95 % interval. Cross-validated by cow: a rule is taught by the other cows' lactations only.
 *
 * <p>Arguments: the folder; then, if wanted, words that names of rules must hold.
 */
public final class AccuracyTable {
    private static final int MOST_TESTS = 10;

    private AccuracyTable() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length == 0) {
            System.err.println(
                    "usage: AccuracyTable <folder with testdays-*.csv and truth-*.csv> [part of a rule's name]");
            System.exit(2);
        }
        List<KnownLactation> all = KnownLactation.read(Path.of(arguments[0]));
        String part = arguments.length > 1 ? arguments[1] : "";
        System.out.printf(
                Locale.ROOT,
                "%d lactations, %d with a true 305-day total%n",
                all.size(),
                all.stream().filter(one -> one.milk305Kg().isPresent()).count());
        for (ProjectionRule rule : ProjectionRules.all()) {
            if (rule.name().contains(part)) {
                print(rule, all);
            }
        }
    }

    private static void print(ProjectionRule rule, List<KnownLactation> all) {
        System.out.printf(Locale.ROOT, "%n%s%n", rule.name());
        System.out.println(
                "| tests | lactations | bias kg | SD kg | MAE kg | MAE % | correlation | in 80 % | in 95 % |");
        System.out.println("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        Map<String, ProjectionRule.Taught> taught = new LinkedHashMap<>();
        for (int tests = 1; tests <= MOST_TESTS; tests++) {
            List<Outcome> outcomes = new ArrayList<>();
            for (KnownLactation one : all) {
                if (one.milk305Kg().isPresent() && one.afterTests(tests).isPresent()) {
                    taught.computeIfAbsent(
                                    one.animal(),
                                    animal -> rule.learn(all.stream()
                                            .filter(other -> !other.animal().equals(animal))
                                            .toList()))
                            .project(
                                    one.animal(),
                                    one.breed(),
                                    one.afterTests(tests).orElseThrow())
                            .ifPresent(answer -> outcomes.add(
                                    new Outcome(answer, one.milk305Kg().getAsDouble())));
                }
            }
            System.out.println(row(tests, outcomes));
        }
    }

    private record Outcome(ProjectionRule.Answer answer, double trueKg) {
        double errorKg() {
            return answer.kg() - trueKg;
        }
    }

    private static String row(int tests, List<Outcome> outcomes) {
        if (outcomes.size() < 3) {
            return "| " + tests + " | " + outcomes.size() + " | | | | | | | |";
        }
        DescriptiveStatistics errors = new DescriptiveStatistics();
        DescriptiveStatistics sizes = new DescriptiveStatistics();
        outcomes.forEach(one -> {
            errors.addValue(one.errorKg());
            sizes.addValue(Math.abs(one.errorKg()));
        });
        double[] truths = outcomes.stream().mapToDouble(Outcome::trueKg).toArray();
        double[] projected =
                outcomes.stream().mapToDouble(one -> one.answer().kg()).toArray();
        double meanTruth = new DescriptiveStatistics(truths).getMean();
        return String.format(
                Locale.ROOT,
                "| %d | %d | %+.0f | %.0f | %.0f | %.2f | %.3f | %s | %s |",
                tests,
                outcomes.size(),
                errors.getMean(),
                errors.getStandardDeviation(),
                sizes.getMean(),
                100 * sizes.getMean() / meanTruth,
                new PearsonsCorrelation().correlation(truths, projected),
                coverage(outcomes, true),
                coverage(outcomes, false));
    }

    private static String coverage(List<Outcome> outcomes, boolean narrow) {
        int inside = 0;
        for (Outcome one : outcomes) {
            Optional<Interval> interval =
                    narrow ? one.answer().interval80() : one.answer().interval95();
            if (interval.isEmpty()) {
                return "";
            }
            inside += one.trueKg() >= interval.get().low()
                            && one.trueKg() <= interval.get().high()
                    ? 1
                    : 0;
        }
        return String.format(Locale.ROOT, "%.1f", 100.0 * inside / outcomes.size());
    }
}
