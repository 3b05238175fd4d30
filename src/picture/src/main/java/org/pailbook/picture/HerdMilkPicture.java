package org.pailbook.picture;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Milk of a whole herd on its test days, in time. */
public final class HerdMilkPicture {
    private static final int MOST_LEVELS = 6;
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
        double[] ys = points.stream().mapToDouble(Point::milkKg).toArray();
        double most = points.stream().mapToDouble(Point::milkKg).max().orElse(1);
        double step = step(most);
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i <= Math.ceil(most / step); i++) {
            levels.add(i * step);
        }
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
                        words.of("milk.description", points.size(), first, last),
                        List.of(Chart.Key.of(Mark.DISC, words.of("milk.key.test"))),
                        days,
                        levels.get(levels.size() - 1))
                .levels(
                        levels,
                        levels.stream()
                                .map(level -> String.format(Locale.ENGLISH, "%.0f", level))
                                .toList(),
                        words.of("axis.kgPerDay"))
                .ticks(ticks, dates, words.of("milk.axis"))
                .line(xs, ys, Stroke.FAINT);
        for (int i = 0; i < xs.length; i++) {
            chart.mark(xs[i], ys[i], Mark.DISC);
        }
        return chart.svg();
    }

    /** 1, 2 or 5 times a power of ten, so that few lines suffice. */
    private static double step(double most) {
        double power = Math.max(1, Math.pow(10, Math.floor(Math.log10(most)) - 1));
        for (double times : new double[] {1, 2, 5, 10, 20, 50}) {
            if (most / (power * times) <= MOST_LEVELS) {
                return power * times;
            }
        }
        return power * 100;
    }

    private static int months(double days) {
        return (int) Math.max(1, Math.ceil(days / 30 / MOST_TICKS));
    }
}
