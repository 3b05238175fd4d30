package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.breeding.BreedingPeriod;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.Pregnancy;

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
    private static final int DAYS_AT_FIRST_CHECK = 35;
    private static final int MONTHS_WHEN_DRY = 8;
    private static final int SURELY_OPEN_DAYS = 42;

    public static final PregnancyState OPEN = new PregnancyState(Kind.OPEN, Optional.empty(), OptionalInt.empty());

    /** Neither inseminated nor checked as far as is known; counts as open. */
    public static final PregnancyState NOT_KNOWN =
            new PregnancyState(Kind.NOT_KNOWN, Optional.empty(), OptionalInt.empty());

    /** How the state is known. */
    public enum Kind {
        OPEN,
        PREGNANT,
        /** Pregnant as far as can be told; since when is assumed. */
        PREGNANT_SINCE_ASSUMED,
        INSEMINATED,
        NOT_KNOWN
    }

    public PregnancyState {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(monthsPregnant, "monthsPregnant");
        boolean isPregnant = kind == Kind.PREGNANT || kind == Kind.PREGNANT_SINCE_ASSUMED;
        boolean isDated = kind == Kind.INSEMINATED || (isPregnant && monthsPregnant.isEmpty());
        if (isDated != date.isPresent() || (monthsPregnant.isPresent() && !isPregnant)) {
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
     * As her breeding record tells. Found pregnant and nothing tells since when: since {@value #DAYS_AT_FIRST_CHECK} days before the check.
     * Dried off without a service or check on record: {@value #MONTHS_WHEN_DRY} months, for cows are dried off in calf. Calved less than {@value
     * #SURELY_OPEN_DAYS} days ago: open. These numbers are ours.
     */
    public static PregnancyState ofRecord(BreedingRecord record) {
        BreedingPeriod now = record.now();
        return switch (record.state()) {
            case PREGNANT -> {
                Pregnancy pregnancy = now.goingOn().orElseThrow();
                yield pregnancy
                        .conception()
                        .map(PregnancyState::pregnantSince)
                        .orElseGet(() -> assumedSince(pregnancy.confirmedOn(), now.calving()));
            }
            case SERVED -> inseminatedOn(now.lastService().orElseThrow().date());
            case OPEN -> {
                boolean isTold =
                        now.lastService().isPresent() || !now.pregnancies().isEmpty();
                if (!isTold && record.isDry()) {
                    yield new PregnancyState(
                            Kind.PREGNANT_SINCE_ASSUMED, Optional.empty(), OptionalInt.of(MONTHS_WHEN_DRY));
                }
                yield isTold || record.daysSinceCalving().orElse(SURELY_OPEN_DAYS) < SURELY_OPEN_DAYS
                        ? OPEN
                        : NOT_KNOWN;
            }
            case LEFT -> NOT_KNOWN;
        };
    }

    private static PregnancyState assumedSince(Optional<LocalDate> check, Optional<LocalDate> calving) {
        if (check.isEmpty()) {
            return NOT_KNOWN;
        }
        LocalDate assumed = check.get().minusDays(DAYS_AT_FIRST_CHECK);
        LocalDate since = calving.filter(assumed::isBefore).orElse(assumed);
        return new PregnancyState(Kind.PREGNANT_SINCE_ASSUMED, Optional.of(since), OptionalInt.empty());
    }

    /**
     * Chance that she is pregnant. After an insemination the conception rate; once a cycle of 21 days has passed and no return was seen,
     * {@code c / (c + (1 - c)(1 - h))} by Bayes, h being the share of heats seen.
     */
    public double pregnantShare(LocalDate asOf) {
        return switch (kind) {
            case PREGNANT, PREGNANT_SINCE_ASSUMED -> 1;
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
