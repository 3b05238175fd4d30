package org.pailbook.picture;

import java.util.List;
import java.util.stream.IntStream;

/** The cows in milk by days in milk and the milk of their last test, first, second and later lactations by shape. */
public final class HerdStagePicture {
    private static final int DAYS_BETWEEN_TICKS = 100;

    private HerdStagePicture() {}

    /**
     * One cow of it.
     *
     * @param milkKg of 24 hours, on her last test
     * @param daysInMilk on that test
     */
    public record Point(int daysInMilk, double milkKg, int parity) {
        private Mark mark() {
            return switch (parity) {
                case 1 -> Mark.RING;
                case 2 -> Mark.TRIANGLE;
                default -> Mark.CROSS;
            };
        }
    }

    /** @param cows tested cows, in any order */
    public static String of(PictureForm form, String title, List<Point> cows) {
        Words words = form.words();
        List<Double> levels = Levels.upTo(
                form.weights().of(cows.stream().mapToDouble(Point::milkKg).max().orElse(1)));
        double mostDays =
                roundedUp(cows.stream().mapToDouble(Point::daysInMilk).max().orElse(1), DAYS_BETWEEN_TICKS);
        List<Double> ticks = steps(mostDays, DAYS_BETWEEN_TICKS * (int) Math.ceil(mostDays / 600));
        Chart chart = new Chart(
                        "stage",
                        form,
                        title,
                        words.of(
                                "stage.description", cows.size(), form.weights().name()),
                        List.of(
                                Chart.Key.of(Mark.RING, words.of("stage.key.first")),
                                Chart.Key.of(Mark.TRIANGLE, words.of("stage.key.second")),
                                Chart.Key.of(Mark.CROSS, words.of("stage.key.later"))),
                        mostDays,
                        Levels.top(levels))
                .levels(levels, words.of("axis.weightPerDay", form.weights().name()))
                .ticks(ticks, words.of("axis.daysInMilk"));
        cows.forEach(cow -> chart.mark(cow.daysInMilk(), form.weights().of(cow.milkKg()), cow.mark()));
        return chart.svg();
    }

    private static double roundedUp(double value, int step) {
        return step * Math.max(1, Math.ceil(value / step));
    }

    private static List<Double> steps(double most, int step) {
        return IntStream.rangeClosed(0, (int) (most / step))
                .mapToObj(i -> (double) (i * step))
                .toList();
    }
}
