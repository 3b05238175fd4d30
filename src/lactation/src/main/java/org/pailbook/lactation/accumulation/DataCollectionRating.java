package org.pailbook.lactation.accumulation;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * How much a way of recording tells of a lactation, on a scale on which monthly supervised tests of all milkings have 100: {@code 104 x}
 * the squared correlation of estimated with true yield. Daily weighing has 104.
 *
 * <p>For a lactation in progress the squared correlation is the reliability of its projection.
 *
 * @see "VanRaden, P. M. USDA-ARS reference note Data collection rating (read)"
 */
public final class DataCollectionRating implements PublishedMethod {
    public static final DataCollectionRating VANRADEN = new DataCollectionRating();

    private static final double DAILY = 104;

    private DataCollectionRating() {}

    /**
     * @param squaredCorrelationShare squared correlation of estimated and true yield, 0 to 1
     * @return 0 to 104
     * @throws IllegalArgumentException if it is outside 0 to 1
     */
    public double rating(double squaredCorrelationShare) {
        if (!(squaredCorrelationShare >= 0 && squaredCorrelationShare <= 1)) {
            throw new IllegalArgumentException(
                    "squaredCorrelationShare (" + squaredCorrelationShare + ") must lie between 0 and 1");
        }
        return DAILY * squaredCorrelationShare;
    }

    @Override
    public String id() {
        return "data-collection-rating";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "VanRaden, P. M.",
                1997,
                "USDA-ARS reference note, Data collection rating; year of the method's paper",
                HowKnown.READ);
    }
}
