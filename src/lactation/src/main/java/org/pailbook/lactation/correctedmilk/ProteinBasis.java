package org.pailbook.lactation.correctedmilk;

/**
 * Which protein a formula means. Laboratories report one or the other; crude protein (all nitrogen times 6.38) is about 0.19
 * percentage points above true protein (Powell and Sanders, USDA-ARS report K2-01).
 */
public enum ProteinBasis {
    CRUDE,
    TRUE,
    /** The source does not say; used with the percentage the laboratory reports. */
    NOT_STATED,
    /** The formula does not use protein. */
    UNUSED
}
