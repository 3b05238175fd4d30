package org.pailbook.benchmarks.projection;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.pailbook.benchmarks.projection.ComparedMethods.Begun;
import org.pailbook.benchmarks.projection.ComparedMethods.OptionalProjected;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.projection.ProjectionError;

/**
 * How right each way of projecting is on a folder of measured lactations: bias, spread and size of the error, correlation and coverage by number of
 * tests. Every cow is projected from the other cows alone, and from her own first tests; where it says so, from her earlier lactations too.
 *
 * <p>Folder: {@code testdays*.csv} (animal, parity, breed, calving_date, test_date, milk_kg, fat_pct, protein_pct, scc_thousand) and {@code
 * truth*.csv} (animal, parity, milk_305_kg). Coverage is that of a method's own intervals, or for
 * methods with a standard error alone, of intervals calibrated on open data.
 */
public final class AccuracyHarness {
    private static final int MOST_TESTS = 10;

    private AccuracyHarness() {}

    /** @param args the folder */
    public static void main(String[] args) throws IOException {
        if (args.length != 1) {
            throw new IllegalArgumentException("one argument: the folder with testdays*.csv and truth*.csv");
        }
        List<MeasuredLactation> all = MeasuredLactation.read(Path.of(args[0]));
        for (Map.Entry<String, Function<Begun, OptionalProjected>> method :
                new ComparedMethods(all).byName().entrySet()) {
            print(method.getKey(), all, method.getValue());
        }
    }

    private static void print(String name, List<MeasuredLactation> all, Function<Begun, OptionalProjected> method) {
        System.out.printf(
                Locale.ROOT,
                "%n%s%n| tests | lactations | bias %% | SD kg | MAE %% | RMSE kg | correlation | in 80 %% | in 95 %% |%n",
                name);
        System.out.println("|---|---|---|---|---|---|---|---|---|");
        boolean[] hasError = new boolean[1];
        int[][] inside = new int[Coverage.values().length + 1][MOST_TESTS + 1];
        List<ProjectionError> errors = new ArrayList<>();
        for (MeasuredLactation one : all) {
            int most = Math.min(MOST_TESTS, one.lactation().testDays().size());
            for (int tests = 0; tests <= most && one.milk305Kg().isPresent(); tests++) {
                OptionalProjected answer = method.apply(one.begun(tests));
                if (answer.projected() != null) {
                    hasError[0] |= answer.projected().standardErrorKg().isPresent();
                    count(
                            answer.projected().inside(),
                            tests,
                            inside,
                            one.milk305Kg().getAsDouble());
                    // a method without a standard error gets one that is not printed
                    errors.add(new ProjectionError(
                            tests,
                            answer.projected().kg(),
                            answer.projected().standardErrorKg().orElse(1),
                            one.milk305Kg().getAsDouble()));
                }
            }
        }
        for (ProjectionAccuracy.Row row :
                ProjectionAccuracy.of(errors, IntervalCalibration.OPEN_DATA).rows()) {
            String coverage = hasError[0] ? coverage(row, inside) : "- | -";
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %d | %+.2f | %.0f | %.2f | %.0f | %.3f | %s |%n",
                    row.tests(),
                    row.lactations(),
                    100 * row.biasKg() / row.meanTrueKg(),
                    row.errorSdKg(),
                    100 * row.meanAbsoluteErrorKg() / row.meanTrueKg(),
                    row.rootMeanSquareErrorKg(),
                    row.correlation(),
                    coverage);
        }
    }

    /** Truths inside the intervals a method gave itself; the last row counts its answers. */
    private static void count(List<Interval> intervals, int tests, int[][] inside, double trueKg) {
        for (int i = 0; i < intervals.size(); i++) {
            inside[i][tests] += intervals.get(i).low() <= trueKg
                            && trueKg <= intervals.get(i).high()
                    ? 1
                    : 0;
        }
        inside[Coverage.values().length][tests] += intervals.isEmpty() ? 0 : 1;
    }

    private static String coverage(ProjectionAccuracy.Row row, int[][] inside) {
        int own = inside[Coverage.values().length][row.tests()];
        double share80 = own > 0 ? inside[0][row.tests()] / (double) own : row.coverage80Share();
        double share95 = own > 0 ? inside[1][row.tests()] / (double) own : row.coverage95Share();
        return String.format(Locale.ROOT, "%.3f | %.3f", share80, share95);
    }
}
