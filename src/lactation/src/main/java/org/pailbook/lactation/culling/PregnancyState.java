package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is known of a cow's pregnancy.
 *
 * @param kind how it is known
 * @param date of conception if pregnant, of the last insemination if only inseminated
 * @param monthsPregnant 1 to 9, where the months are known and not the day
 */
public record PregnancyState(Kind kind, Optional<LocalDate> date, OptionalInt monthsPregnant) {
    /** Chance that an insemination holds. Ours. */
    static final double CONCEPTION_SHARE = 0.40;

    /** Chance that a heat is seen. Ours. */
    static final double HEAT_SEEN_SHARE = 0.60;

    private static final int CYCLE_DAYS = 21;

    public static final PregnancyState OPEN = new PregnancyState(Kind.OPEN, Optional.empty(), OptionalInt.empty());

    /** Neither inseminated nor checked as far as is known; counts as open. */
    public static final PregnancyState NOT_KNOWN =
            new PregnancyState(Kind.NOT_KNOWN, Optional.empty(), OptionalInt.empty());

    /** How the state is known. */
    public enum Kind {
        OPEN,
        PREGNANT,
        INSEMINATED,
        NOT_KNOWN
    }

    public PregnancyState {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(monthsPregnant, "monthsPregnant");
        boolean isDated = kind == Kind.INSEMINATED || (kind == Kind.PREGNANT && monthsPregnant.isEmpty());
        if (isDated != date.isPresent() || (monthsPregnant.isPresent() && kind != Kind.PREGNANT)) {
            throw new IllegalArgumentException(
                    kind + " does not go with date " + date + " and monthsPregnant " + monthsPregnant);
        }
        if (monthsPregnant.isPresent()
                && (monthsPregnant.getAsInt() < 1 || monthsPregnant.getAsInt() > StageGrid.LONGEST_PREGNANCY)) {
            throw new IllegalArgumentException("monthsPregnant (" + monthsPregnant.getAsInt() + ") must be 1 to 9");
        }
    }

    /** Found pregnant from a conception on that day. */
    public static PregnancyState pregnantSince(LocalDate conception) {
        return new PregnancyState(Kind.PREGNANT, Optional.of(conception), OptionalInt.empty());
    }

    public static PregnancyState pregnantForMonths(int months) {
        return new PregnancyState(Kind.PREGNANT, Optional.empty(), OptionalInt.of(months));
    }

    /** Last inseminated on that day, not checked, and not seen to return. */
    public static PregnancyState inseminatedOn(LocalDate day) {
        return new PregnancyState(Kind.INSEMINATED, Optional.of(day), OptionalInt.empty());
    }

    /**
     * Chance that she is pregnant. After an insemination the conception rate; once a cycle of 21 days has passed and no return was seen,
     * {@code c / (c + (1 - c)(1 - h))} by Bayes, h being the share of heats seen.
     */
    public double pregnantShare(LocalDate asOf) {
        return switch (kind) {
            case PREGNANT -> 1;
            case OPEN, NOT_KNOWN -> 0;
            case INSEMINATED ->
                ChronoUnit.DAYS.between(date.orElseThrow(), asOf) < CYCLE_DAYS
                        ? CONCEPTION_SHARE
                        : afterNoReturn(CONCEPTION_SHARE, HEAT_SEEN_SHARE);
        };
    }

    static double afterNoReturn(double conceptionShare, double heatSeenShare) {
        return conceptionShare / (conceptionShare + (1 - conceptionShare) * (1 - heatSeenShare));
    }
}
