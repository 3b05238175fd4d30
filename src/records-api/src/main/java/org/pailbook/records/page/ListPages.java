package org.pailbook.records.page;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.picture.CalibrationPicture;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;

/** What the lists show. */
final class ListPages {
    private ListPages() {}

    /** One herd to choose. */
    record HerdLine(String link, String name, String code, String lastTest) {
        /** @param lastTest her figures are shown for that day, if it is long ago; null without a test */
        static HerdLine of(HerdRow herd, LocalDate lastTest, boolean isLongAgo) {
            return new HerdLine(
                    "/pages/herds/" + herd.code + (isLongAgo ? "?asOf=" + lastTest : ""),
                    herd.name,
                    herd.code,
                    lastTest == null ? Shown.NONE : lastTest.toString());
        }
    }

    /** The herds somebody may read. */
    record HerdsPage(List<HerdLine> herds, String label, List<FormField> form, List<String> faults) {
        static HerdsPage of(List<HerdLine> herds, String label) {
            return new HerdsPage(herds, label, List.of(), List.of());
        }

        /** For who may make herds and has none. */
        static HerdsPage withForm(String label, PageForm form) {
            return new HerdsPage(List.of(), label, form.fields(), form.otherFaults());
        }
    }

    /** Cows in milk with what is expected of them. */
    record ProjectionsPage(Shown shown, Part<CowLine> part) {
        static ProjectionsPage of(Shown shown, List<KnownCow> cows, int number) {
            Part<KnownCow> some = Part.of(CowLine.inMilk(cows), number);
            return new ProjectionsPage(shown, some.as(cow -> CowLine.of(cow, shown)));
        }
    }

    /** One animal in the list of all. */
    record AnimalLine(String link, String id, String name, String breed, String state, String calvedOn) {
        static AnimalLine of(KnownCow cow, Shown shown) {
            return new AnimalLine(
                    shown.cow(cow.identifier()),
                    cow.identifier().id(),
                    cow.name(),
                    cow.onDay().breed(),
                    PageWords.word("state." + cow.onDay().state().wireName()),
                    cow.onDay()
                            .lactations()
                            .latest()
                            .map(latest -> latest.lactation().calvingDate().toString())
                            .orElse(Shown.NONE));
        }
    }

    /** All animals. */
    record AnimalsPage(Shown shown, Part<AnimalLine> part) {
        static AnimalsPage of(Shown shown, List<KnownCow> cows, int number) {
            return new AnimalsPage(
                    shown,
                    Part.of(cows.stream().map(cow -> AnimalLine.of(cow, shown)).toList(), number));
        }
    }

    /** One finding about one cow. */
    record FindingLine(String link, String id, String name, String date, String meaning, String seen, String expected) {
        static FindingLine of(KnownCow cow, Finding finding, Shown shown) {
            return new FindingLine(
                    shown.cow(cow.identifier()),
                    cow.identifier().id(),
                    cow.name(),
                    finding.date().map(LocalDate::toString).orElse(Shown.NONE),
                    Said.meaning(finding.code()),
                    finding.saidSeen().map(seen -> Said.in(seen, shown)).orElse(Shown.NONE),
                    finding.saidExpected()
                            .map(expected -> Said.in(expected, shown))
                            .orElse(Shown.NONE));
        }
    }

    /** What the records lack or contradict. */
    record FindingsPage(Shown shown, Part<FindingLine> part) {
        static FindingsPage of(Shown shown, List<KnownCow> cows, int number) {
            Stream<FindingLine> lines = cows.stream()
                    .flatMap(cow -> cow.findings().stream().map(finding -> FindingLine.of(cow, finding, shown)));
            return new FindingsPage(shown, Part.of(lines.toList(), number));
        }
    }

    /** Accuracy after so many tests. */
    record AccuracyLine(
            int tests, int lactations, String bias, String error, String errorPct, String inside80, String inside95) {
        static AccuracyLine of(ProjectionAccuracy.Row row, Shown shown) {
            return new AccuracyLine(
                    row.tests(),
                    row.lactations(),
                    Shown.number(shown.unit().of(row.biasKg()), 0),
                    Shown.number(shown.unit().of(row.meanAbsoluteErrorKg()), 0),
                    Shown.number(100 * row.meanAbsoluteErrorKg() / row.meanTrueKg(), 1),
                    Shown.number(100 * row.coverage80Share(), 0),
                    Shown.number(100 * row.coverage95Share(), 0));
        }
    }

    /** How right past projections were. */
    record AccuracyPage(
            Shown shown,
            int completed,
            int lactations,
            int testDays,
            boolean isByHerd,
            String method,
            String picture,
            List<AccuracyLine> rows) {
        static AccuracyPage of(Shown shown, HerdKnowledge knowledge) {
            List<ProjectionAccuracy.Row> rows = knowledge.accuracy().rows();
            return new AccuracyPage(
                    shown,
                    knowledge.completedLactations(),
                    knowledge.lactations(),
                    knowledge.testDays(),
                    knowledge.isCalibratedByHerd(),
                    PageWords.with(
                            "method",
                            knowledge.method().id(),
                            knowledge.method().version()),
                    rows.isEmpty()
                            ? ""
                            : CalibrationPicture.of(shown.picture(), PageWords.word("accuracy.picture"), rows),
                    rows.stream().map(row -> AccuracyLine.of(row, shown)).toList());
        }
    }
}
