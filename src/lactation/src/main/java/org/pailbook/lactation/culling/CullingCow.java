package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What has to be known of a cow to say what keeping her is worth.
 *
 * @param cow names her in lists
 * @param parity number of calvings, 1 or more
 * @param calvingDate of the latest calving; without it nothing can be said
 * @param pregnancy what is known of it
 * @param milk her level
 * @param isToBeBred false if she is marked not to be bred again
 * @param health what a chronic condition costs, as entered; empty if nobody entered anything
 */
public record CullingCow(
        String cow,
        int parity,
        Optional<LocalDate> calvingDate,
        PregnancyState pregnancy,
        MilkLevel milk,
        boolean isToBeBred,
        Optional<HealthBurden> health) {
    public CullingCow {
        Objects.requireNonNull(cow, "cow");
        Objects.requireNonNull(calvingDate, "calvingDate");
        Objects.requireNonNull(pregnancy, "pregnancy");
        Objects.requireNonNull(milk, "milk");
        Objects.requireNonNull(health, "health");
        if (parity < 1) {
            throw new IllegalArgumentException("parity (" + parity + ") must be at least 1");
        }
    }

    /** Of a cow that is to be bred and whose health nobody valued. */
    public static CullingCow of(
            String cow, int parity, LocalDate calvingDate, PregnancyState pregnancy, MilkLevel milk) {
        return new CullingCow(cow, parity, Optional.of(calvingDate), pregnancy, milk, true, Optional.empty());
    }

    public CullingCow notToBeBred() {
        return new CullingCow(cow, parity, calvingDate, pregnancy, milk, false, health);
    }

    public CullingCow withHealth(HealthBurden burden) {
        return new CullingCow(cow, parity, calvingDate, pregnancy, milk, isToBeBred, Optional.of(burden));
    }
}
