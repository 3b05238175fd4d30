package org.pailbook.lactation.summary;

/** First, second, and third and later lactations: they differ too much in yield to be averaged without saying so. */
public enum ParityGroup {
    FIRST("1"),
    SECOND("2"),
    MATURE("3+");

    private final String wireName;

    ParityGroup(String wireName) {
        this.wireName = wireName;
    }

    /** @param parity 1 or more */
    public static ParityGroup of(int parity) {
        return parity == 1 ? FIRST : parity == 2 ? SECOND : MATURE;
    }

    public String wireName() {
        return wireName;
    }
}
