package org.pailbook.lactation.method;

/** How the content of a cited source came to us. */
public enum HowKnown {
    /** The source, or its abstract where that holds the statement used, was read. */
    READ,
    /** Taken from a document that quotes the source. */
    TRANSCRIBED,
    /** Written from memory of the literature; to be checked against the source before it is relied on. */
    FROM_MEMORY,
    /** A rule chosen for this library; a decision, not a fact. */
    OURS,
    /** Common practice, no source. */
    COMMON_PRACTICE
}
