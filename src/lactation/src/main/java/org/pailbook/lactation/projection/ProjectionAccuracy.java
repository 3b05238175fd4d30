package org.pailbook.lactation.projection;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;

/**
 * How right past projections were, by the number of tests they were made from: the table a herd sees beside its projections.
 *
 * @param rows by number of tests, fewest first; only numbers that occur
 */
public record ProjectionAccuracy(List<Row> rows) {
    public ProjectionAccuracy {
        rows = List.copyOf(rows);
    }

    /**
     * Accuracy after so many tests.
     *
     * @param tests test days the projections were made from
     * @param lactations how many projections
     * @param meanTrueKg mean of what the lactations came to
     * @param biasKg mean of projection less truth
     * @param errorSdKg standard deviation of projection less truth; 0 for one lactation
     * @param meanAbsoluteErrorKg mean size of the error
     * @param rootMeanSquareErrorKg root of the mean square of the error
     * @param correlation of projection and truth; NaN-free: 0 where either does not vary
     * @param coverage80Share share of truths within the 80 % interval
     * @param coverage95Share share of truths within the 95 % interval
     * @param errorRatio root mean square of error over standard error: above 1, the model is too sure
     */
    public record Row(
            int tests,
            int lactations,
            double meanTrueKg,
            double biasKg,
            double errorSdKg,
            double meanAbsoluteErrorKg,
            double rootMeanSquareErrorKg,
            double correlation,
            double coverage80Share,
            double coverage95Share,
            double errorRatio) {}

    /** @param calibration the one the intervals are to be judged with */
    public static ProjectionAccuracy of(List<ProjectionError> errors, IntervalCalibration calibration) {
        Objects.requireNonNull(calibration, "calibration");
        TreeMap<Integer, List<ProjectionError>> byTests = new TreeMap<>(Comparator.naturalOrder());
        for (ProjectionError error : errors) {
            byTests.computeIfAbsent(error.tests(), unused -> new ArrayList<>()).add(error);
        }
        List<Row> rows = new ArrayList<>();
        byTests.forEach((tests, some) -> rows.add(row(tests, some, calibration)));
        return new ProjectionAccuracy(rows);
    }

    private static Row row(int tests, List<ProjectionError> errors, IntervalCalibration calibration) {
        int n = errors.size();
        double meanTrue =
                errors.stream().mapToDouble(ProjectionError::trueKg).average().orElse(0);
        double meanProjected = errors.stream()
                .mapToDouble(ProjectionError::projectedKg)
                .average()
                .orElse(0);
        double bias = meanProjected - meanTrue;
        double absolute = 0;
        double squares = 0;
        double trueSquares = 0;
        double projectedSquares = 0;
        double products = 0;
        double standardised = 0;
        int in80 = 0;
        int in95 = 0;
        for (ProjectionError one : errors) {
            double error = one.projectedKg() - one.trueKg();
            absolute += Math.abs(error);
            squares += error * error;
            double fromMeanTrue = one.trueKg() - meanTrue;
            double fromMeanProjected = one.projectedKg() - meanProjected;
            trueSquares += fromMeanTrue * fromMeanTrue;
            projectedSquares += fromMeanProjected * fromMeanProjected;
            products += fromMeanTrue * fromMeanProjected;
            double z = one.standardised();
            standardised += z * z;
            in80 += isWithin(z, tests, Coverage.EIGHTY_PERCENT, calibration) ? 1 : 0;
            in95 += isWithin(z, tests, Coverage.NINETY_FIVE_PERCENT, calibration) ? 1 : 0;
        }
        double variation = Math.sqrt(trueSquares * projectedSquares);
        return new Row(
                tests,
                n,
                meanTrue,
                bias,
                n > 1 ? Math.sqrt(Math.max(0, squares - n * bias * bias) / (n - 1)) : 0,
                absolute / n,
                Math.sqrt(squares / n),
                variation > 0 ? products / variation : 0,
                in80 / (double) n,
                in95 / (double) n,
                Math.sqrt(standardised / n));
    }

    private static boolean isWithin(double z, int tests, Coverage coverage, IntervalCalibration calibration) {
        return z >= calibration.low(tests, coverage) && z <= calibration.high(tests, coverage);
    }
}
