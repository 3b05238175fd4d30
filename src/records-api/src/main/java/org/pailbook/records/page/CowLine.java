package org.pailbook.records.page;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.computed.KnownCow;

/** One cow in milk in a list of projections. */
record CowLine(
        String link,
        String id,
        String name,
        int parity,
        int daysInMilk,
        int tests,
        String lastTest,
        String lastMilk,
        String projected,
        String interval,
        List<String> warnings) {

    /** The cows in milk, longest in milk first. */
    static List<KnownCow> inMilk(List<KnownCow> cows) {
        return cows.stream()
                .filter(cow -> cow.onDay().state() == CowState.IN_MILK)
                .sorted(Comparator.comparingInt(
                        (KnownCow cow) -> -cow.onDay().daysInMilk().orElseThrow()))
                .toList();
    }

    static CowLine of(KnownCow cow, Shown shown) {
        AssembledLactation latest = cow.onDay().lactations().latest().orElseThrow();
        Projection305 projection = cow.onDay().milkProjection(latest);
        Figure milk = projection.milk305();
        Optional<TestDay> last = cow.onDay().lastTestDay();
        return new CowLine(
                shown.cow(cow.identifier()),
                cow.identifier().id(),
                cow.name(),
                latest.lactation().parity(),
                cow.onDay().daysInMilk().orElseThrow(),
                projection.tests(),
                last.map(test -> test.date().toString()).orElse(Shown.NONE),
                shown.plainWeight(last.map(TestDay::milkKg).orElse(OptionalDouble.empty()), 1),
                shown.plainWeight(milk.value(), 0),
                shown.ends(milk.interval(Coverage.EIGHTY_PERCENT.share()), 0),
                Stream.concat(latest.findings().stream(), milk.findings().stream())
                        .filter(finding -> finding.severity() != org.pailbook.lactation.finding.Severity.NOTES)
                        .map(finding -> Said.meaning(finding.code()))
                        .distinct()
                        .toList());
    }
}
