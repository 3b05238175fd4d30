package org.pailbook.lactation.withheld;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.event.WithholdingEnd;

/**
 * A cow whose milk must stay out of the tank.
 *
 * @param animal she
 * @param reasons one or more, the earliest first
 */
public record WithheldCow(String animal, List<WithheldReason> reasons) {
    public WithheldCow {
        Objects.requireNonNull(animal, "animal");
        reasons = List.copyOf(reasons);
        if (reasons.isEmpty()) {
            throw new IllegalArgumentException("reasons must not be empty: without one she is not withheld");
        }
    }

    /** The latest end of all reasons; empty if one of them has no end. */
    public Optional<WithholdingEnd> until() {
        if (reasons.stream().anyMatch(reason -> reason.until().isEmpty())) {
            return Optional.empty();
        }
        return reasons.stream()
                .map(reason -> reason.until().orElseThrow())
                .max(Comparator.comparing(WithholdingEnd::over));
    }
}
