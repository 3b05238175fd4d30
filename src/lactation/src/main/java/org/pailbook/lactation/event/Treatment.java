package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * A treatment, as far as her milk is concerned.
 *
 * @param startedOn the first day
 * @param product its name as entered
 * @param milkWithheldUntil as entered from the label or the veterinarian; empty if nobody entered it
 * @param by who said so: the prescriber or who recorded it; empty text if not recorded
 */
public record Treatment(LocalDate startedOn, String product, Optional<WithholdingEnd> milkWithheldUntil, String by) {
    public Treatment {
        Objects.requireNonNull(startedOn, "startedOn");
        Objects.requireNonNull(product, "product");
        Objects.requireNonNull(milkWithheldUntil, "milkWithheldUntil");
        Objects.requireNonNull(by, "by");
    }
}
