package org.pailbook.lactation.culling;

/** What the figures point to; never an order. */
public enum Suggestion {
    WORTH_KEEPING("worth-keeping", "worth keeping"),
    CLOSE_CALL("close-call", "close call"),
    CONSIDER_REPLACING("consider-replacing", "consider replacing");

    private final String code;
    private final String words;

    Suggestion(String code, String words) {
        this.code = code;
        this.words = words;
    }

    public String code() {
        return code;
    }

    public String words() {
        return words;
    }
}
