package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * The cows' weights of a day against what their milk became: {@code 100 (cows - accounted) / accounted} percent. Up to 3 % is fine, above 3 look,
 * above 5 explain it before the test is used to scale by the tank, above 10 the test day is suspect. Levels ours, drawn from assumed errors of
 * meters, tank and density; no published tolerance was found. Records are kept and used.
 *
 * @param date the test day
 * @param cowsKg all weights of it
 * @param accountedKg tank or pickup, and milk used or thrown away
 */
public record TankGap(LocalDate date, double cowsKg, double accountedKg) {
    private static final double FINE_PCT = 3;
    private static final double LOOK_PCT = 5;
    private static final double EXPLAIN_PCT = 10;
    private static final double PERCENT = 100;

    public TankGap {
        if (!(accountedKg > 0)) {
            throw new IllegalArgumentException("accountedKg (" + accountedKg + ") must be above 0");
        }
    }

    public double percent() {
        return PERCENT * (cowsKg - accountedKg) / accountedKg;
    }

    /** Empty if it is fine. */
    public Optional<Finding> finding() {
        double off = Math.abs(percent());
        if (off <= FINE_PCT) {
            return Optional.empty();
        }
        SentenceCode level = off <= LOOK_PCT
                ? SentenceCode.LOOK_WHERE
                : off <= EXPLAIN_PCT ? SentenceCode.EXPLAIN_BEFORE : SentenceCode.TEST_DAY_SUSPECT;
        return Optional.of(Finding.on(date, FindingCode.TANK_GAP)
                .withSeen(
                        SentenceCode.COWS_AGAINST_TANK,
                        Amount.measured(cowsKg, 1, "kg"),
                        Amount.measured(accountedKg, 1, "kg"),
                        Amount.number(percent(), 1),
                        Sentence.of(level))
                .withExpected(SentenceCode.AT_MOST_3_PERCENT_APART));
    }
}
