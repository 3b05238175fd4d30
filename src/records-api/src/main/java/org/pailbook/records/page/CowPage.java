package org.pailbook.records.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.picture.CellHistoryPicture;
import org.pailbook.picture.LactationPicture;
import org.pailbook.records.computed.KnownCow;

/**
 * One cow, and one of her lactations.
 *
 * @param path of the page without its parameters, after the herd's
 * @param parity of the lactation shown; 0 if she has none
 * @param daysInMilk only while she is in milk; else empty text
 * @param picture of the lactation; empty text without one
 * @param against why her milk stays out of the tank
 * @param toDo lists she is on, each with the reason
 * @param worth null without prices
 * @param cells picture of all cell counts; empty text without one
 */
record CowPage(
        Shown shown,
        String path,
        String id,
        String scheme,
        String name,
        String breed,
        String state,
        int parity,
        String calvedOn,
        String daysInMilk,
        List<ShownFigure> figures,
        String nextTest,
        String picture,
        List<TestLine> tests,
        List<DayLine> days,
        List<LactationLine> lactations,
        List<EventLine> events,
        List<String> against,
        List<String> toDo,
        CowWorth.Worth worth,
        String cells,
        List<String> findings) {
    private static final int DAYS_BETWEEN_LINES = 15;

    /** One test of the lactation shown. */
    record TestLine(String date, int day, String milk, String fatPct, String proteinPct, String scc) {}

    /** One day of the curve. */
    record DayLine(int day, String expected, String band) {}

    /** One of her lactations. */
    record LactationLine(
            String link, int parity, String calvedOn, String endedOn, int tests, String milk, boolean isShown) {}

    /** Something that happened to her. */
    record EventLine(String date, String what) {}

    static CowPage of(KnownCow cow, int parity, Shown shown, CowDossier.Dossier dossier) {
        Optional<AssembledLactation> found = parity == 0
                ? cow.onDay().lactations().latest()
                : cow.onDay().lactations().ofParity(parity);
        Optional<Projection305> projection = found.map(cow.onDay()::projection);
        List<ShownFigure> figures = new ArrayList<>();
        found.ifPresent(of -> figures.addAll(figures(cow.onDay().accumulated(of), projection.orElseThrow(), shown)));
        return new CowPage(
                shown,
                Shown.cowPath(cow.identifier()),
                cow.identifier().id(),
                cow.identifier().scheme(),
                cow.name(),
                cow.onDay().breed(),
                PageWords.word("state." + cow.onDay().state().wireName()),
                found.map(of -> of.lactation().parity()).orElse(0),
                found.map(of -> of.lactation().calvingDate().toString()).orElse(""),
                cow.onDay().daysInMilk().isPresent()
                        ? Integer.toString(cow.onDay().daysInMilk().getAsInt())
                        : "",
                figures,
                projection
                        .flatMap(Projection305::nextTestDay)
                        .map(next -> PageWords.with(
                                "cow.next",
                                next.date(),
                                shown.weight(java.util.OptionalDouble.of(next.milkKg()), 1) + " ("
                                        + PageWords.with("interval.80", shown.ends(Optional.of(next.interval80()), 1))
                                        + ")"))
                        .orElse(""),
                found.map(of -> LactationPicture.of(
                                shown.picture(),
                                cow.name().isEmpty() ? cow.identifier().id() : cow.name(),
                                of.lactation(),
                                projection.orElseThrow(),
                                List.of(),
                                shown.asOf(),
                                dossier.moments()))
                        .orElse(""),
                found.map(of -> tests(of, shown)).orElse(List.of()),
                projection.map(of -> days(of, shown)).orElse(List.of()),
                cow.onDay().lactations().lactations().stream()
                        .map(of -> line(cow, of, found.orElse(null) == of, shown))
                        .toList(),
                events(cow.record().history(), dossier.lines()),
                dossier.against(),
                dossier.toDo(),
                dossier.worth().orElse(null),
                cells(cow.record().history(), shown),
                Stream.concat(
                                cow.onDay().lactations().findings().stream(),
                                found.map(AssembledLactation::findings).orElse(List.of()).stream())
                        .map(finding -> Said.of(finding, shown))
                        .toList());
    }

    private static List<ShownFigure> figures(AccumulatedYield yield, Projection305 projection, Shown shown) {
        return List.of(
                ShownFigure.of("figure.projected", projection.milk305(), 0, shown),
                ShownFigure.of("figure.projectedFat", projection.fat305().orElseThrow(), 0, shown),
                ShownFigure.of(
                        "figure.projectedProtein", projection.protein305().orElseThrow(), 0, shown),
                ShownFigure.of(
                        "figure.projectedCells", projection.cellScore305().orElseThrow(), 1, shown),
                ShownFigure.of("figure.accumulated", yield.milk(), 0, shown),
                ShownFigure.of("figure.accumulatedFat", yield.fat(), 1, shown),
                ShownFigure.of("figure.accumulatedProtein", yield.protein(), 1, shown));
    }

    private static List<TestLine> tests(AssembledLactation of, Shown shown) {
        return of.lactation().testDays().stream()
                .map(test -> new TestLine(
                        test.date().toString(),
                        of.lactation().daysInMilk(test.date()),
                        shown.plainWeight(test.milkKg(), 1),
                        Shown.number(test.fatPct(), 2),
                        Shown.number(test.proteinPct(), 2),
                        Shown.number(test.sccThousandPerMl(), 0)))
                .toList();
    }

    private static List<DayLine> days(Projection305 projection, Shown shown) {
        double[] kg = projection.dailyMilkKg();
        List<Interval> band = projection.dailyBand(Coverage.EIGHTY_PERCENT);
        List<DayLine> lines = new ArrayList<>();
        for (int day = 1; day <= kg.length; day += day == 1 ? DAYS_BETWEEN_LINES - 1 : DAYS_BETWEEN_LINES) {
            lines.add(new DayLine(
                    day, Shown.number(shown.unit().of(kg[day - 1]), 1), shown.ends(Optional.of(band.get(day - 1)), 1)));
        }
        return lines;
    }

    private static LactationLine line(KnownCow cow, AssembledLactation of, boolean isShown, Shown shown) {
        AccumulatedYield yield = cow.onDay().accumulated(of);
        return new LactationLine(
                shown.lactation(cow.identifier(), of.lactation().parity()),
                of.lactation().parity(),
                of.lactation().calvingDate().toString(),
                of.lactation().endDate().map(LocalDate::toString).orElse(Shown.NONE),
                of.lactation().testDays().size(),
                shown.plainWeight(yield.milk().value(), 0),
                isShown);
    }

    private static List<EventLine> events(CowHistory history, List<EventLine> further) {
        List<EventLine> events = new ArrayList<>(further);
        history.birthDate().ifPresent(date -> events.add(new EventLine(date.toString(), PageWords.word("event.born"))));
        history.calvings()
                .forEach(calving -> events.add(new EventLine(
                        calving.date().toString(),
                        calving.parity().isPresent()
                                ? PageWords.with(
                                        "event.calvedParity", calving.parity().getAsInt())
                                : PageWords.word("event.calved"))));
        history.dryOffs()
                .forEach(dryOff ->
                        events.add(new EventLine(dryOff.date().toString(), PageWords.word("event.driedOff"))));
        history.departures()
                .forEach(departure ->
                        events.add(new EventLine(departure.date().toString(), PageWords.word("event.left"))));
        events.sort(Comparator.comparing(EventLine::date).reversed());
        return events;
    }

    private static String cells(CowHistory history, Shown shown) {
        List<TestDay> counted = history.testDays().stream()
                .filter(test -> test.sccThousandPerMl().isPresent())
                .sorted(Comparator.comparing(TestDay::date))
                .toList();
        return counted.isEmpty()
                ? ""
                : CellHistoryPicture.of(
                        shown.picture(),
                        PageWords.word("cow.cells"),
                        counted,
                        history.calvings().stream()
                                .map(calving -> calving.date())
                                .toList());
    }
}
