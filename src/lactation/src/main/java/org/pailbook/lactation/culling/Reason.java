package org.pailbook.lactation.culling;

import org.pailbook.lactation.sentence.Sentence;

/**
 * One thing about a cow and what it does to her pay-off.
 *
 * @param about what differs
 * @param said the same with her figures
 * @param differenceCu her pay-off less what it would be if this were typical of the herd; above zero speaks for keeping her
 */
public record Reason(About about, Sentence said, double differenceCu) {

    /** In English. */
    public String words() {
        return said.text();
    }

    /** What is set to typical in turn. */
    public enum About {
        MILK_LEVEL("milk-level"),
        PREGNANCY("pregnancy"),
        PARITY("parity"),
        HEALTH("health");

        private final String code;

        About(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
