package org.pailbook.lactation.summary;

/** What a cow is on a day, as far as is recorded. */
public enum CowState {
    /** Calved and neither dried off nor gone. */
    IN_MILK("inMilk"),
    DRY("dry"),
    /** Sold, slaughtered, died. */
    LEFT("left"),
    /** No calving recorded: a heifer, a calf, or a cow whose calvings were not posted. */
    NOT_CALVED("notCalved");

    private final String wireName;

    CowState(String wireName) {
        this.wireName = wireName;
    }

    public String wireName() {
        return wireName;
    }
}
