package org.pailbook.records.intake;

/** What is stored of a request with several rows. */
public enum IntakeMode {
    /** Every row without an error. */
    STORE_GOOD_ROWS,
    /** All rows, or none if any has an error. */
    ALL_OR_NOTHING,
    /** Nothing; the outcomes tell what would happen. */
    DRY_RUN
}
