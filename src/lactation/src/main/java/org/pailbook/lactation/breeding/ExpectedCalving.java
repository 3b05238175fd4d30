package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * When a cow is expected to calve, by {@link GestationLength}.
 *
 * @param conception the day it is counted from
 * @param due the expected day
 * @param earliest 95 of 100 calve from this day
 * @param latest to this one; a conception put by hand or inferred is less sure than that
 * @param findings what it rests on
 */
public record ExpectedCalving(
        LocalDate conception, LocalDate due, LocalDate earliest, LocalDate latest, List<Finding> findings) {

    /** 1.96 standard deviations of 5.5 days, rounded. */
    private static final int HALF_WIDTH_DAYS = 11;

    public ExpectedCalving {
        Objects.requireNonNull(conception, "conception");
        Objects.requireNonNull(due, "due");
        Objects.requireNonNull(earliest, "earliest");
        Objects.requireNonNull(latest, "latest");
        findings = List.copyOf(findings);
    }

    /** Empty if nothing tells since when she is pregnant. */
    public static Optional<ExpectedCalving> of(Pregnancy pregnancy, String breed, boolean heifer) {
        return pregnancy.conception().map(conception -> {
            LocalDate due = GestationLength.NORMAN_2009.due(conception, breed, pregnancy.sireBreed(), heifer);
            return new ExpectedCalving(
                    conception,
                    due,
                    due.minusDays(HALF_WIDTH_DAYS),
                    due.plusDays(HALF_WIDTH_DAYS),
                    GestationLength.NORMAN_2009.knows(breed)
                            ? List.of()
                            : List.of(Finding.of(FindingCode.GESTATION_ASSUMED).withSeen(breed)));
        });
    }

    /** Day to dry her off. */
    public LocalDate dryOff(int dryDays) {
        return due.minusDays(dryDays);
    }

    /** Days from conception to the expected day. */
    public int gestationDays() {
        return Math.toIntExact(ChronoUnit.DAYS.between(conception, due));
    }

    /** Chance that she has calved by the end of that day, if she carries to term; 0 to 1. */
    public double shareCalvedBy(LocalDate day) {
        return GestationLength.shareCalvedBy(Math.toIntExact(ChronoUnit.DAYS.between(due, day)));
    }
}
