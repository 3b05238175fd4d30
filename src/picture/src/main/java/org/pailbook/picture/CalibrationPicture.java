package org.pailbook.picture;

import java.util.List;
import java.util.stream.IntStream;
import org.pailbook.lactation.projection.ProjectionAccuracy;

/** How often the intervals of past projections held, by number of tests, beside how often they should have. */
public final class CalibrationPicture {
    private CalibrationPicture() {}

    /** @param rows by number of tests */
    public static String of(PictureForm form, String title, List<ProjectionAccuracy.Row> rows) {
        Words words = form.words();
        double[] tests =
                rows.stream().mapToDouble(ProjectionAccuracy.Row::tests).toArray();
        double most = Math.max(1, rows.isEmpty() ? 1 : tests[tests.length - 1]);
        double[] across = {0, most};
        List<Double> levels = List.of(0.0, 20.0, 40.0, 60.0, 80.0, 95.0);
        List<Double> ticks = IntStream.rangeClosed(0, (int) most)
                .mapToObj(i -> (double) i)
                .filter(value -> most <= 15 || value % 5 == 0)
                .toList();
        double[] in80 =
                rows.stream().mapToDouble(row -> 100 * row.coverage80Share()).toArray();
        double[] in95 =
                rows.stream().mapToDouble(row -> 100 * row.coverage95Share()).toArray();
        Chart chart = new Chart(
                        "calibration",
                        form,
                        title,
                        words.of("calibration.description"),
                        List.of(
                                Chart.Key.of(Mark.DISC, words.of("calibration.key.in80")),
                                Chart.Key.of(Mark.TRIANGLE, words.of("calibration.key.in95")),
                                Chart.Key.of(Stroke.DASHED, words.of("calibration.key.should"))),
                        most,
                        100)
                .levels(levels, words.of("axis.shareInside"))
                .ticks(ticks, words.of("axis.tests"))
                .line(across, new double[] {80, 80}, Stroke.DASHED)
                .line(across, new double[] {95, 95}, Stroke.DASHED)
                .line(tests, in80, Stroke.FULL)
                .line(tests, in95, Stroke.DOTTED);
        for (int i = 0; i < tests.length; i++) {
            chart.mark(tests[i], in80[i], Mark.DISC).mark(tests[i], in95[i], Mark.TRIANGLE);
        }
        return chart.svg();
    }
}
