package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.Optional;
import org.pailbook.lactation.figure.Rounding;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

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
        String level = off <= LOOK_PCT
                ? "look where it comes from"
                : off <= EXPLAIN_PCT
                        ? "explain it before the test is held against the tank"
                        : "the test day is suspect";
        return Optional.of(Finding.on(date, FindingCode.TANK_GAP)
                .withSeen("cows " + Rounding.halfUp(cowsKg, 1) + " kg, tank and other uses "
                        + Rounding.halfUp(accountedKg, 1) + " kg, " + Rounding.halfUp(percent(), 1) + " %: " + level)
                .withExpected("at most 3 % apart"));
    }
}
