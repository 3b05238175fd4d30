package org.pailbook.lactation.reference;

import org.pailbook.lactation.sentence.SentenceCode;

/** What is followed through a lactation: three yields and the somatic cell score. */
public enum LactationTrait {
    MILK("milk", "kg", SentenceCode.TRAIT_MILK),
    FAT("fat", "kg", SentenceCode.TRAIT_FAT),
    PROTEIN("protein", "kg", SentenceCode.TRAIT_PROTEIN),
    /** Somatic cell score: log2 of cells per mL over 100,000, plus 3. */
    CELLS("cells", "score", SentenceCode.TRAIT_CELLS);

    private final String wireName;
    private final String unit;
    private final SentenceCode said;

    LactationTrait(String wireName, String unit, SentenceCode said) {
        this.wireName = wireName;
        this.unit = unit;
        this.said = said;
    }

    /** The name in data files. */
    public String wireName() {
        return wireName;
    }

    /** What it is called. */
    public SentenceCode said() {
        return said;
    }

    /** Unit of one day's value. */
    public String unit() {
        return unit;
    }
}
