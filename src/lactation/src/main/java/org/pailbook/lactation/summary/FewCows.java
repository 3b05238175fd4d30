package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Measure;

/** Means that are not given of too few cows. */
final class FewCows {
    private FewCows() {}

    static Measured mean(Measure measure, double sum, int n, int least, String unit, LocalDate asOf) {
        List<Finding> findings = n > 0 && n < least
                ? List.of(Finding.of(FindingCode.TOO_FEW_FOR_MEAN)
                        .withSeen(Integer.toString(n))
                        .withExpected(least + " or more"))
                : List.of();
        return Measured.ratio(measure, sum, n, 1, unit, asOf, findings);
    }
}
