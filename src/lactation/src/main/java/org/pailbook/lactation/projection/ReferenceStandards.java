package org.pailbook.lactation.projection;

import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;

/** Where a herd's learning starts: the standard of a breed, parity and trait before anything is known of the herd. Asked by many threads at once. */
@FunctionalInterface
public interface ReferenceStandards {
    /** The refined standards shipped with the library. */
    ReferenceStandards SHIPPED = LactationStandards::refinedForCow;

    LactationStandard forCow(String breed, int parity, LactationTrait trait);
}
