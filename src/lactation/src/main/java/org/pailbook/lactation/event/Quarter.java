package org.pailbook.lactation.event;

import org.pailbook.lactation.sentence.SentenceCode;

/** A quarter of the udder, seen from behind the cow. */
public enum Quarter {
    LEFT_FRONT("leftFront", SentenceCode.LEFT_FRONT),
    RIGHT_FRONT("rightFront", SentenceCode.RIGHT_FRONT),
    LEFT_REAR("leftRear", SentenceCode.LEFT_REAR),
    RIGHT_REAR("rightRear", SentenceCode.RIGHT_REAR);

    private final String wireName;
    private final SentenceCode said;

    Quarter(String wireName, SentenceCode said) {
        this.wireName = wireName;
        this.said = said;
    }

    public String wireName() {
        return wireName;
    }

    /** As people say it: left front. */
    public String words() {
        return said.english();
    }

    public SentenceCode said() {
        return said;
    }
}
