package org.pailbook.picture;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Milk of a whole herd on its test days, in time. */
public final class HerdMilkPicture {
    private static final int MOST_TICKS = 6;

    private HerdMilkPicture() {}

    /** All cows weighed on one day. */
    public record Point(LocalDate date, double milkKg) {}

    /** @param points by date, two or more of different dates */
    public static String of(PictureForm form, String title, List<Point> points) {
        Words words = form.words();
        LocalDate first = points.get(0).date();
        LocalDate last = points.get(points.size() - 1).date();
        double days = ChronoUnit.DAYS.between(first, last);
        if (days < 1) {
            throw new IllegalArgumentException("points must be of two dates at least, not only of " + first);
        }
        double[] xs = points.stream()
                .mapToDouble(point -> ChronoUnit.DAYS.between(first, point.date()))
                .toArray();
        double[] ys = points.stream()
                .mapToDouble(point -> form.weights().of(point.milkKg()))
                .toArray();
        List<Double> levels = Levels.upTo(Arrays.stream(ys).max().orElse(1));
        List<Double> ticks = new ArrayList<>();
        List<String> dates = new ArrayList<>();
        for (LocalDate month = first.withDayOfMonth(1).plusMonths(1);
                !month.isAfter(last);
                month = month.plusMonths(months(days))) {
            ticks.add((double) ChronoUnit.DAYS.between(first, month));
            dates.add(month.toString().substring(0, 7));
        }
        Chart chart = new Chart(
                        "milk",
                        form,
                        title,
                        words.of(
                                "milk.description",
                                points.size(),
                                first,
                                last,
                                form.weights().name()),
                        List.of(Chart.Key.of(Mark.DISC, words.of("milk.key.test"))),
                        days,
                        Levels.top(levels))
                .levels(levels, words.of("axis.weightPerDay", form.weights().name()))
                .ticks(ticks, dates, words.of("milk.axis"))
                .line(xs, ys, Stroke.FAINT);
        for (int i = 0; i < xs.length; i++) {
            chart.mark(xs[i], ys[i], Mark.DISC);
        }
        return chart.svg();
    }

    private static int months(double days) {
        return (int) Math.max(1, Math.ceil(days / 30 / MOST_TICKS));
    }
}
