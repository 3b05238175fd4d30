package org.pailbook.lactation.reference;

/** What is followed through a lactation: three yields and the somatic cell score. */
public enum LactationTrait {
    MILK("milk", "kg"),
    FAT("fat", "kg"),
    PROTEIN("protein", "kg"),
    /** Somatic cell score: log2 of cells per mL over 100,000, plus 3. */
    CELLS("cells", "score");

    private final String wireName;
    private final String unit;

    LactationTrait(String wireName, String unit) {
        this.wireName = wireName;
        this.unit = unit;
    }

    /** The name in data files. */
    public String wireName() {
        return wireName;
    }

    /** Unit of one day's value. */
    public String unit() {
        return unit;
    }
}
