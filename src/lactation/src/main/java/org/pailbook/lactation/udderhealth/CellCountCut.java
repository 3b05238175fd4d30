package org.pailbook.lactation.udderhealth;

import org.pailbook.lactation.testday.TestDay;

/**
 * From which count on a test is called high: 200 thousand per mL unless set. A low count does not rule out an infection: at 200, one composite
 * test found 44 % of the infected cows and called 87 % of the others low.
 *
 * @param highFromThousandPerMl 100 to 400; 150 is in use for heifers
 * @see "Jashari, Piepers and De Vliegher (2016), J. Dairy Sci. 99:9271, abstract (read)"
 */
public record CellCountCut(double highFromThousandPerMl) {
    public static final CellCountCut USUAL = new CellCountCut(200);

    public static final int LEAST = 100;
    public static final int MOST = 400;

    public CellCountCut {
        if (!(highFromThousandPerMl >= LEAST && highFromThousandPerMl <= MOST)) {
            throw new IllegalArgumentException(
                    "highFromThousandPerMl (" + highFromThousandPerMl + ") must be " + LEAST + " to " + MOST);
        }
    }

    /** @throws java.util.NoSuchElementException if cells were not counted */
    public boolean isHigh(TestDay test) {
        return test.sccThousandPerMl().orElseThrow() >= highFromThousandPerMl;
    }
}
