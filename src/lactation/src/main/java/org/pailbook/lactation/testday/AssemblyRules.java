package org.pailbook.lactation.testday;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * What is a matter of rule and not of record when events are put together to lactations. National rules differ, so all of it may be set.
 *
 * @param sameCalvingWithinDays calvings fewer days apart than this are one, entered twice; 1 or more
 * @param abortionCountsFromDaysPregnant an abortion this late starts a lactation; empty: only one of which the farm says so
 * @param missingDryOff when the milking ended if she calved again and no dry-off is on record
 */
public record AssemblyRules(
        int sameCalvingWithinDays, OptionalInt abortionCountsFromDaysPregnant, MissingDryOff missingDryOff) {

    /** About three quarters of a term, days; a rule of thumb from memory, to be set and never assumed. */
    public static final int THREE_QUARTERS_OF_A_TERM_DAYS = 210;

    /**
     * Ours: a cow cannot calve twice within 30 days; an abortion counts only if the farm says so; a dry-off nobody recorded is estimated.
     */
    public static final AssemblyRules OURS = new AssemblyRules(30, OptionalInt.empty(), MissingDryOff.ESTIMATED);

    /** When milking ended if she calved again without a dry-off on record. */
    public enum MissingDryOff {
        /** By {@link EstimatedEnd}, at the latest the day before she calved; without tests that day itself. */
        ESTIMATED,
        /** The day before she calved: no dry period. Credits the last test's weight up to there. */
        DAY_BEFORE_CALVING
    }

    public AssemblyRules {
        Objects.requireNonNull(abortionCountsFromDaysPregnant, "abortionCountsFromDaysPregnant");
        Objects.requireNonNull(missingDryOff, "missingDryOff");
        if (sameCalvingWithinDays < 1) {
            throw new IllegalArgumentException(
                    "sameCalvingWithinDays (" + sameCalvingWithinDays + ") must be at least 1");
        }
    }

    public AssemblyRules withAbortionCountsFromDaysPregnant(int days) {
        return new AssemblyRules(sameCalvingWithinDays, OptionalInt.of(days), missingDryOff);
    }

    public AssemblyRules withMissingDryOff(MissingDryOff rule) {
        return new AssemblyRules(sameCalvingWithinDays, abortionCountsFromDaysPregnant, rule);
    }
}
