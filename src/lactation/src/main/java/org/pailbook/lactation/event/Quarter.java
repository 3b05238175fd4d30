package org.pailbook.lactation.event;

import java.util.Locale;

/** A quarter of the udder, seen from behind the cow. */
public enum Quarter {
    LEFT_FRONT("leftFront"),
    RIGHT_FRONT("rightFront"),
    LEFT_REAR("leftRear"),
    RIGHT_REAR("rightRear");

    private final String wireName;

    Quarter(String wireName) {
        this.wireName = wireName;
    }

    public String wireName() {
        return wireName;
    }

    /** As people say it: left front. */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
