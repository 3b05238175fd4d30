package org.pailbook.lactation.summary;

import java.util.Objects;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;

/**
 * A figure beside the same one a year before, made from what had happened by that day. Nothing is said of why it changed, and a difference
 * of few cows is chance.
 *
 * @param now the figure
 * @param yearBefore 365 days earlier
 */
public record Compared(Figure now, Figure yearBefore) {
    public Compared {
        Objects.requireNonNull(now, "now");
        Objects.requireNonNull(yearBefore, "yearBefore");
        if (!now.method().id().equals(yearBefore.method().id()) || !now.unit().equals(yearBefore.unit())) {
            throw new IllegalArgumentException(
                    "yearBefore (" + yearBefore.method().id() + ") must be the same measure as now ("
                            + now.method().id() + ")");
        }
    }

    /** Now less a year before, unit of the figures; empty unless both have a value. */
    public OptionalDouble difference() {
        return now.value().isPresent() && yearBefore.value().isPresent()
                ? OptionalDouble.of(now.orThrow() - yearBefore.orThrow())
                : OptionalDouble.empty();
    }
}
