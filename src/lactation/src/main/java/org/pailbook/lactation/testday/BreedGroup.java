package org.pailbook.lactation.testday;

/** The two groups of breeds for which ICAR gives ranges of composition. */
public enum BreedGroup {
    DAIRY("dairy"),
    /** Breeds of high fat, such as Jersey. */
    HIGH_FAT("high-fat"),
    /** The breed is not known: each range reaches as far as the wider of the two groups. */
    UNKNOWN("any");

    private final String code;

    BreedGroup(String code) {
        this.code = code;
    }

    /** The word for it in the table of limits. */
    public String code() {
        return code;
    }
}
