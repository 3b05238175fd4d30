package org.pailbook.lactation.accumulation;

import java.util.Objects;
import org.pailbook.lactation.figure.Figure;

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

    /** Number of days covered, first and last included. */
    public int daysCovered() {
        return toDaysInMilk - fromDaysInMilk + 1;
    }
}
