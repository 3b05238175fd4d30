package org.pailbook.records.calculate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.Lactation;

/**
 * A posted lactation and what it is projected to come to.
 *
 * @param daysInMilk on the as-of day; negative if she had not calved then
 * @param cellScore empty if cells were never counted in it
 * @param findings of all its figures, each once
 */
record ProjectedLactation(
        PostedHerdLactation posted,
        int daysInMilk,
        Projection305 projection,
        BestPrediction method,
        Figure milk,
        Figure fat,
        Figure protein,
        Optional<Figure> cellScore,
        List<Finding> findings) {

    static ProjectedLactation of(PostedHerdLactation posted, HerdKnowledge herd, Optional<LocalDate> asOf) {
        Lactation lactation = posted.lactation();
        LocalDate day = asOf.orElseGet(posted::latestDay);
        // before her calving nothing is known of her; she is expected to give what her group gives
        LocalDate asKnown = day.isBefore(lactation.calvingDate()) ? lactation.calvingDate() : day;
        BestPrediction method = herd.method();
        Projection305 projection = herd.project(posted.cow(), posted.breed(), lactation, asKnown);
        Figure milk = projection.milk305();
        Figure fat = projection.fat305().orElseThrow();
        Figure protein = projection.protein305().orElseThrow();
        boolean hasCells = lactation.asOf(asKnown).testDays().stream()
                .anyMatch(test -> test.sccThousandPerMl().isPresent());
        Optional<Figure> cellScore = hasCells ? projection.cellScore305() : Optional.empty();
        Set<Finding> findings = new LinkedHashSet<>();
        if (!posted.isParityPosted()) {
            findings.add(
                    Finding.of(FindingCode.PARITY_COUNTED).withField("parity").withSeen("none; computed as parity 1"));
        }
        if (day.isBefore(lactation.calvingDate())) {
            findings.add(Finding.on(lactation.calvingDate(), FindingCode.CALVING_AFTER_AS_OF));
        }
        int later = posted.testsAfter(day);
        if (later > 0) {
            findings.add(testsAfter(later));
        }
        findings.addAll(milk.findings());
        findings.addAll(fat.findings());
        findings.addAll(protein.findings());
        cellScore.ifPresent(figure -> findings.addAll(figure.findings()));
        return new ProjectedLactation(
                posted,
                lactation.daysInMilk(day),
                projection,
                method,
                milk,
                fat,
                protein,
                cellScore,
                new ArrayList<>(findings));
    }

    static Finding testsAfter(int count) {
        return Finding.of(FindingCode.TESTS_AFTER_AS_OF).withSeen(count == 1 ? "1 test day" : count + " test days");
    }
}
