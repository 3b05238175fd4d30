package org.pailbook.picture;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.IntStream;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.SomaticCellScore;

/**
 * The cell counts of one cow through her life on a scale of doublings, with her calvings. No limit is drawn: what a count means
 * is for her veterinarian.
 */
public final class CellHistoryPicture {
    private static final int HIGHEST_SCORE = 10;

    private CellHistoryPicture() {}

    /**
     * Draws it.
     *
     * @param tests of all her lactations, by date; those without a cell count are passed over
     * @param calvings their dates
     */
    public static String of(PictureForm form, String title, List<TestDay> tests, List<LocalDate> calvings) {
        Words words = form.words();
        List<TestDay> counted = tests.stream()
                .filter(test -> test.sccThousandPerMl().isPresent())
                .toList();
        if (counted.isEmpty()) {
            throw new IllegalArgumentException("tests must hold a cell count at least");
        }
        LocalDate first = counted.get(0).date();
        LocalDate last = counted.get(counted.size() - 1).date();
        double days = Math.max(1, ChronoUnit.DAYS.between(first, last));
        double[] xs = counted.stream()
                .mapToDouble(test -> ChronoUnit.DAYS.between(first, test.date()))
                .toArray();
        double[] scores = counted.stream()
                .mapToDouble(test -> SomaticCellScore.score(
                        Math.max(1, test.sccThousandPerMl().getAsDouble())))
                .toArray();
        List<Double> levels = IntStream.rangeClosed(0, HIGHEST_SCORE / 2)
                .mapToObj(i -> 2.0 * i)
                .toList();
        Chart chart = new Chart(
                        "cells",
                        form,
                        title,
                        words.of("cells.description", counted.size()),
                        List.of(
                                Chart.Key.of(Mark.DISC, words.of("cells.key.test")),
                                Chart.Key.of(Stroke.DOTTED, words.of("cells.key.calving"))),
                        days,
                        HIGHEST_SCORE)
                .levels(
                        levels,
                        levels.stream()
                                .map(SomaticCellScore::sccThousandPerMl)
                                .map(cells -> form.numbers().text(cells, cells % 1 == 0 ? 0 : 1))
                                .toList(),
                        words.of("axis.cells"))
                .ticks(List.of(0.0, days), List.of("", ""), words.of("cells.dates", first, last))
                .line(xs, scores, Stroke.FAINT);
        for (LocalDate calving : calvings) {
            long day = ChronoUnit.DAYS.between(first, calving);
            if (day >= 0 && day <= days) {
                chart.post(day, Stroke.DOTTED, "", 0);
            }
        }
        for (int i = 0; i < xs.length; i++) {
            chart.mark(xs[i], scores[i], Mark.DISC);
        }
        return chart.svg();
    }
}
