package org.pailbook.picture;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.picture.PictureForm.WeightUnit;

/**
 * One lactation: its tests, the milk expected of each day to day 305, the band 80 in 100 weights should lie in, her calving, her dry-off and the as-of
 * day.
 */
public final class LactationPicture {
    private static final int LAST_DAY = 305;
    private static final List<Double> TICKS = List.of(0.0, 50.0, 100.0, 150.0, 200.0, 250.0, 300.0);

    private LactationPicture() {}

    /** What a moment of her lactation was; a letter stands for each. */
    public enum Event {
        SERVICE("S", "lactation.key.service"),
        CHECK("C", "lactation.key.check"),
        TREATMENT("T", "lactation.key.treatment"),
        FOREMILK("F", "lactation.key.foremilk");

        private final String letter;
        private final String word;

        Event(String letter, String word) {
            this.letter = letter;
            this.word = word;
        }
    }

    /** Something that happened on a day. */
    public record Moment(LocalDate date, Event event) {}

    /** Draws it without events. */
    public static String of(
            PictureForm form,
            String animal,
            Lactation lactation,
            Projection305 projection,
            List<TestDay> later,
            LocalDate asOf) {
        return of(form, animal, lactation, projection, later, asOf, List.of());
    }

    /**
     * Draws it.
     *
     * @param animal how she is called; any text
     * @param lactation tests up to the as-of day
     * @param projection of that lactation; one without a test draws what her group gives
     * @param later tests weighed after the as-of day, drawn hollow; usually none
     * @param moments events of any time; those of the days drawn are shown
     */
    public static String of(
            PictureForm form,
            String animal,
            Lactation lactation,
            Projection305 projection,
            List<TestDay> later,
            LocalDate asOf,
            List<Moment> moments) {
        Words words = form.words();
        List<Moment> shown = moments.stream()
                .filter(moment -> isDrawn(lactation.daysInMilk(moment.date())))
                .toList();
        double[] kg = projection.dailyMilkKg();
        List<Interval> band = projection.dailyBand(Coverage.EIGHTY_PERCENT);
        double[] days = IntStream.rangeClosed(1, kg.length).asDoubleStream().toArray();
        double mostKg = band.stream().mapToDouble(Interval::high).max().orElse(1);
        for (TestDay test : lactation.testDays()) {
            mostKg = Math.max(mostKg, test.milkKg().orElse(0));
        }
        WeightUnit unit = form.weights();
        List<Double> levels = Levels.upTo(unit.of(mostKg));
        Chart chart = new Chart(
                        "lactation",
                        form,
                        title(form, animal, lactation, projection.milk305(), asOf),
                        words.of("lactation.description", projection.tests(), unit.name()),
                        keys(words, later, shown),
                        LAST_DAY,
                        Levels.top(levels))
                .band(
                        days,
                        band.stream().mapToDouble(day -> unit.of(day.low())).toArray(),
                        band.stream().mapToDouble(day -> unit.of(day.high())).toArray())
                .line(days, Arrays.stream(kg).map(unit::of).toArray(), Stroke.FULL)
                .levels(levels, words.of("axis.weightPerDay", unit.name()))
                .ticks(TICKS, words.of("axis.daysInMilk"));
        chart.post(0, Stroke.FAINT, words.of("lactation.calved", lactation.calvingDate()), 0);
        lactation.endDate().ifPresent(end -> post(chart, lactation, end, Stroke.DOTTED, words, "lactation.ended"));
        if (lactation.endDate().isEmpty()) {
            post(chart, lactation, asOf, Stroke.DASHED, words, "lactation.today");
        }
        marks(chart, unit, lactation, lactation.testDays(), Mark.DISC);
        marks(chart, unit, lactation, later, Mark.RING);
        shown.forEach(moment -> chart.letter(lactation.daysInMilk(moment.date()), moment.event().letter));
        return chart.svg();
    }

    private static boolean isDrawn(int day) {
        return day >= 0 && day <= LAST_DAY;
    }

    private static String title(PictureForm form, String animal, Lactation lactation, Figure milk, LocalDate asOf) {
        Interval interval = milk.interval(Coverage.EIGHTY_PERCENT.share()).orElseThrow();
        return form.words()
                .of(
                        "lactation.title",
                        animal,
                        lactation.parity(),
                        asOf,
                        form.weight(milk.orThrow()),
                        form.weight(interval.low()),
                        form.weight(interval.high()),
                        form.weights().name());
    }

    private static List<Chart.Key> keys(Words words, List<TestDay> later, List<Moment> moments) {
        List<Chart.Key> keys = new ArrayList<>(List.of(
                Chart.Key.of(Mark.DISC, words.of("lactation.key.test")),
                Chart.Key.of(Stroke.FULL, words.of("lactation.key.expected")),
                Chart.Key.ofBand(words.of("lactation.key.band"))));
        if (!later.isEmpty()) {
            keys.add(Chart.Key.of(Mark.RING, words.of("lactation.key.later")));
        }
        for (Event event : Event.values()) {
            if (moments.stream().anyMatch(moment -> moment.event() == event)) {
                keys.add(Chart.Key.ofLetter(event.letter, words.of(event.word)));
            }
        }
        return keys;
    }

    private static void post(
            Chart chart, Lactation lactation, LocalDate date, Stroke stroke, Words words, String word) {
        int day = lactation.daysInMilk(date);
        if (day > 0 && day <= LAST_DAY) {
            chart.post(day, stroke, words.of(word, day), 1);
        }
    }

    private static void marks(Chart chart, WeightUnit unit, Lactation lactation, List<TestDay> tests, Mark mark) {
        for (TestDay test : tests) {
            int day = lactation.daysInMilk(test.date());
            if (test.milkKg().isPresent() && day >= 0 && day <= LAST_DAY) {
                chart.mark(day, unit.of(test.milkKg().getAsDouble()), mark);
            }
        }
    }
}
