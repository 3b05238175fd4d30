package org.pailbook.records.intake;

/** What is stored of a request with several rows. */
public enum IntakeMode {
    /** Every row without an error. */
    STORE_GOOD_ROWS,
    /** All rows, or none if any has an error. */
    ALL_OR_NOTHING,
    /** Every row without an error, or none if a row has to do with another one: rows of several requests. */
    SEPARATE_POSTS,
    /** Nothing; the outcomes tell what would happen. */
    DRY_RUN
}
