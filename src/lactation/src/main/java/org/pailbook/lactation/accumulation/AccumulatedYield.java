package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Lactation;

/**
 * What a cow gave over the days covered, by one method.
 *
 * @param milk kg
 * @param fat kg
 * @param protein kg
 * @param fatPct fat of all the milk, percent by mass, from unrounded sums
 * @param proteinPct protein of all the milk, percent by mass, from unrounded sums
 * @param fromDaysInMilk first day counted: 1, the day after calving
 * @param toDaysInMilk last day counted; 0, before the first, if there is no value
 * @param milkTests tests the milk was made from
 * @param fatTests tests among them with fat
 * @param proteinTests tests among them with protein
 */
public record AccumulatedYield(
        Figure milk,
        Figure fat,
        Figure protein,
        Figure fatPct,
        Figure proteinPct,
        int fromDaysInMilk,
        int toDaysInMilk,
        int milkTests,
        int fatTests,
        int proteinTests) {

    public AccumulatedYield {
        Objects.requireNonNull(milk, "milk");
        Objects.requireNonNull(fat, "fat");
        Objects.requireNonNull(protein, "protein");
        Objects.requireNonNull(fatPct, "fatPct");
        Objects.requireNonNull(proteinPct, "proteinPct");
    }

    /**
     * Says so when a lactation that goes on was counted up to its last test only.
     *
     * @param toDay last day in milk counted
     * @param mostDays days in milk that would be counted at most
     */
    public static Optional<Finding> daysNotCounted(Lactation lactation, LocalDate asOf, int toDay, int mostDays) {
        long asOfDay = ChronoUnit.DAYS.between(lactation.calvingDate(), asOf);
        if (toDay == 0 || lactation.endDate().isPresent() || toDay >= Math.min(asOfDay, mostDays)) {
            return Optional.empty();
        }
        return Optional.of(
                Finding.on(DaysInMilk.dateOf(lactation.calvingDate(), toDay), FindingCode.COUNTED_TO_LAST_TEST)
                        .withSeen(SentenceCode.DAY_OF, toDay, asOfDay));
    }

    /** Number of days covered, first and last included. */
    public int daysCovered() {
        return toDaysInMilk - fromDaysInMilk + 1;
    }
}
