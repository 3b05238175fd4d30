package org.pailbook.records.page;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.picture.HerdMilkPicture;
import org.pailbook.picture.HerdStagePicture;
import org.pailbook.records.computed.KnownCow;

/**
 * One herd on a day.
 *
 * @param picture SVG; empty text without a tested cow in milk
 * @param toDo what wants doing
 * @param days milk of the last days, by day
 * @param milkPicture SVG of the milk of test days; empty text with less than two
 * @param tests the herd's last test dates, newest first
 * @param first some of the cows in milk
 * @param longAgo the last test day, if it is so long ago that today's figures say little; empty text if not
 */
record HerdPage(
        Shown shown,
        int inMilk,
        int dry,
        int notCalved,
        int left,
        List<ShownFigure> figures,
        String picture,
        List<TestLine> tests,
        List<CowLine> first,
        List<HerdToday.ToDo> toDo,
        List<HerdToday.DayLine> days,
        String milkPicture,
        long findings,
        String longAgo) {
    private static final int MOST_TEST_DATES = 13;
    private static final int FIRST_COWS = 12;
    /** Twice the usual interval of four weeks. Ours. */
    private static final int LONG_AGO_DAYS = 56;

    /** All cows weighed on one day. */
    record TestLine(String date, int cows, String milk, String mean) {}

    static HerdPage of(Shown shown, List<KnownCow> cows, List<HerdToday.ToDo> toDo, List<HerdToday.DayLine> days) {
        HerdOnDay day = HerdOnDay.of(cows.stream().map(KnownCow::onDay).toList(), shown.asOf());
        List<ShownFigure> figures = new ArrayList<>(List.of(
                ShownFigure.of("figure.milkOfLastTest", day.milkOfLastTestDate(), 0, shown),
                ShownFigure.of("figure.meanMilk", day.meanMilkOfLastTestDate(), 1, shown),
                ShownFigure.of("figure.fatPct", day.fatPctOfLastTestDate(), 2, shown),
                ShownFigure.of("figure.proteinPct", day.proteinPctOfLastTestDate(), 2, shown),
                ShownFigure.of("figure.scc", day.sccOfLastTestDate(), 0, shown),
                ShownFigure.of("figure.meanDaysInMilk", day.meanDaysInMilk(), 0, shown),
                ShownFigure.of("figure.meanProjected", day.meanProjection305(), 0, shown)));
        List<HerdStagePicture.Point> points = CowLine.inMilk(cows).stream()
                .flatMap(cow -> cow.onDay().lastTestDay().stream()
                        .filter(test -> test.milkKg().isPresent())
                        .map(test -> point(cow, test)))
                .toList();
        List<KnownCow> newest = CowLine.inMilk(cows).stream()
                .sorted(Comparator.comparingInt(
                        (KnownCow cow) -> cow.onDay().daysInMilk().orElseThrow()))
                .limit(FIRST_COWS)
                .toList();
        TreeMap<LocalDate, double[]> byDate = testDates(cows);
        return new HerdPage(
                shown,
                day.count(CowState.IN_MILK),
                day.count(CowState.DRY),
                day.count(CowState.NOT_CALVED),
                day.count(CowState.LEFT),
                figures,
                points.isEmpty()
                        ? ""
                        : HerdStagePicture.of(shown.picture(), PageWords.with("herd.picture", shown.asOf()), points),
                byDate.entrySet().stream()
                        .limit(MOST_TEST_DATES)
                        .map(entry -> line(entry, shown))
                        .toList(),
                newest.stream().map(cow -> CowLine.of(cow, shown)).toList(),
                toDo,
                days,
                milkPicture(byDate, shown),
                cows.stream().mapToLong(cow -> cow.findings().size()).sum(),
                day.lastTestDate()
                        .filter(last -> ChronoUnit.DAYS.between(last, shown.asOf()) > LONG_AGO_DAYS)
                        .map(LocalDate::toString)
                        .orElse(""));
    }

    private static HerdStagePicture.Point point(KnownCow cow, TestDay test) {
        Lactation latest = cow.onDay().lactations().latest().orElseThrow().lactation();
        return new HerdStagePicture.Point(
                latest.daysInMilk(test.date()), test.milkKg().getAsDouble(), latest.parity());
    }

    /** Cows and kg of each test date, latest first. */
    private static TreeMap<LocalDate, double[]> testDates(List<KnownCow> cows) {
        TreeMap<LocalDate, double[]> byDate = new TreeMap<>(Comparator.reverseOrder());
        for (KnownCow cow : cows) {
            for (AssembledLactation of : cow.onDay().lactations().lactations()) {
                for (TestDay test : of.lactation().testDays()) {
                    test.milkKg().ifPresent(kg -> {
                        double[] sum = byDate.computeIfAbsent(test.date(), any -> new double[2]);
                        sum[0]++;
                        sum[1] += kg;
                    });
                }
            }
        }
        return byDate;
    }

    private static TestLine line(Map.Entry<LocalDate, double[]> date, Shown shown) {
        double[] sum = date.getValue();
        return new TestLine(
                date.getKey().toString(),
                (int) sum[0],
                Shown.number(shown.unit().of(sum[1]), 0),
                Shown.number(shown.unit().of(sum[1] / sum[0]), 1));
    }

    /** Of the test days of a year; one or none is no picture. */
    private static String milkPicture(TreeMap<LocalDate, double[]> byDate, Shown shown) {
        List<HerdMilkPicture.Point> points = byDate.entrySet().stream()
                .filter(date -> date.getKey().isAfter(shown.asOf().minusYears(1)))
                .sorted(Map.Entry.comparingByKey())
                .map(date -> new HerdMilkPicture.Point(date.getKey(), date.getValue()[1]))
                .toList();
        return points.size() < 2
                ? ""
                : HerdMilkPicture.of(shown.picture(), PageWords.word("herd.milk.picture"), points);
    }
}
