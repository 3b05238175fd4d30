package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;

/**
 * 24 hours of milk and its composition, worked out from single milkings.
 *
 * @param date the day
 * @param milk kg in 24 hours, with the method and what weakens it
 * @param fatPct weighted by milk over the milkings sampled
 * @param proteinPct likewise
 * @param lactosePct likewise
 * @param sccThousandPerMl likewise
 * @param milkingsWeighed how many of the day's milkings were weighed
 * @param milkingsPerDay how many there were
 * @param addedVarianceShare see {@link AddedTestVariance}; empty for a plan without a figure
 */
public record DailyYield(
        LocalDate date,
        Figure milk,
        OptionalDouble fatPct,
        OptionalDouble proteinPct,
        OptionalDouble lactosePct,
        OptionalDouble sccThousandPerMl,
        int milkingsWeighed,
        int milkingsPerDay,
        OptionalDouble addedVarianceShare) {

    public DailyYield {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(milk, "milk");
        Objects.requireNonNull(addedVarianceShare, "addedVarianceShare");
    }

    /** As a test day; empty if the milk has no value. */
    public Optional<TestDay> testDay() {
        return milk.value().isEmpty()
                ? Optional.empty()
                : Optional.of(new TestDay(
                        date,
                        milk.value(),
                        fatPct,
                        proteinPct,
                        lactosePct,
                        sccThousandPerMl,
                        addedVarianceShare.orElse(0),
                        List.of()));
    }
}
