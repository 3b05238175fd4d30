package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * A limit for the cell count of the tank: a dated rule of a place or a buyer. Which one holds for a farm, and since when, its user chooses;
 * ask your buyer or authority.
 *
 * @param id stable, kebab-case
 * @param place whose rule it is
 * @param limitThousandPerMl 1,000 per mL
 * @param rule how counts are held against it
 * @param samples how many months or samples it looks at
 * @param mostAbove how many of these samples, or means in a row, may not be above it: that many is above
 * @param validFrom since when; empty if not known
 * @param source where it was read, and how that is known
 */
public record TankLimit(
        String id,
        String place,
        double limitThousandPerMl,
        Rule rule,
        int samples,
        int mostAbove,
        Optional<LocalDate> validFrom,
        String source) {

    /** How counts are held against a limit. */
    public enum Rule {
        /** Geometric mean of all samples of so many months, at least one a month. */
        GEOMETRIC_MEAN_OF_MONTHS,
        /** So many geometric means of three tests in a row above it. */
        MEANS_OF_THREE_IN_A_ROW,
        /** So many of the last samples above it. */
        COUNT_OF_SAMPLES,
        /** Each sample by itself. */
        EACH_SAMPLE
    }

    public TankLimit {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(validFrom, "validFrom");
        Objects.requireNonNull(source, "source");
        if (!(limitThousandPerMl > 0) || samples < 1 || mostAbove < 1) {
            throw new IllegalArgumentException("limitThousandPerMl (" + limitThousandPerMl + "), samples (" + samples
                    + ") and mostAbove (" + mostAbove + ") must be above 0");
        }
    }
}
