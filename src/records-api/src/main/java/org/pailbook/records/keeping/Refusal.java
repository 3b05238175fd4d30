package org.pailbook.records.keeping;

/** Why something cannot be done, in one sentence for whoever runs the service. */
public final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;

    public Refusal(String why) {
        super(why, null, false, false);
    }
}
