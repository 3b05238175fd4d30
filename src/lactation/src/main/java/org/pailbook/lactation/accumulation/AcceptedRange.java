package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * Percentages used without confirmation; others are kept, flagged and take no part. ICAR's ranges, from memory; the breed is not known
 * here, so each reaches from the lower end for dairy breeds to the upper end for high-fat breeds.
 */
public enum AcceptedRange {
    FAT("fatPct", 1.5, 12.0),
    PROTEIN("proteinPct", 1.0, 9.0);

    private final String field;
    private final double leastPct;
    private final double mostPct;

    AcceptedRange(String field, double leastPct, double mostPct) {
        this.field = field;
        this.leastPct = leastPct;
        this.mostPct = mostPct;
    }

    public String field() {
        return field;
    }

    public boolean accepts(double pct) {
        return pct >= leastPct && pct <= mostPct;
    }

    public Finding finding(LocalDate date, double pct) {
        return Finding.on(date, FindingCode.OUT_OF_RANGE)
                .withField(field)
                .withSeen(pct + " %")
                .withExpected(leastPct + " to " + mostPct + " %");
    }
}
