package org.pailbook.lactation.curve;

/**
 * What a curve does over a lactation. Classes by the signs of the parameters, after Jeretina, Babnik and Skorjanc 2013 (extract
 * read).
 */
public enum CurveShape {
    /** Rises to a peak and falls. */
    STANDARD,
    /** Falls from the first day on. */
    FALLING,
    /** Rises to the last day. */
    RISING,
    /** Falls first and rises later: a valley. */
    REVERSED;

    static CurveShape of(boolean risesFirst, boolean risesLater) {
        if (risesFirst) {
            return risesLater ? RISING : STANDARD;
        }
        return risesLater ? REVERSED : FALLING;
    }
}
