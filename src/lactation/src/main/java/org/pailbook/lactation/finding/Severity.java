package org.pailbook.lactation.finding;

/** What a finding does to the figure it is attached to; nothing is said of how bad it is for the cow. */
public enum Severity {
    /** There is no value because of it. */
    BLOCKS,
    /** There is a value, to be read together with the finding. */
    WEAKENS,
    /** Worth knowing; the value is what it would be without it. */
    NOTES
}
