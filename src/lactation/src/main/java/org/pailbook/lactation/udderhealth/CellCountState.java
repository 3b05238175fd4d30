package org.pailbook.lactation.udderhealth;

/** What two counts in a row say: of the count, not of an infection. */
public enum CellCountState {
    /** Low, low. */
    CLEAN("clean"),
    /** Low, high. */
    NEW("new"),
    /** High, low. */
    CURED("cured"),
    /** High, high. */
    CHRONIC("chronic");

    private final String wireName;

    CellCountState(String wireName) {
        this.wireName = wireName;
    }

    static CellCountState of(boolean wasHigh, boolean isHigh) {
        if (wasHigh) {
            return isHigh ? CHRONIC : CURED;
        }
        return isHigh ? NEW : CLEAN;
    }

    public String wireName() {
        return wireName;
    }
}
