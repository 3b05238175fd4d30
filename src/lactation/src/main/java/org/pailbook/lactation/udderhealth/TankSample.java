package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A count of the tank as the laboratory or the buyer gave it.
 *
 * @param date the day of the sample
 * @param sccThousandPerMl somatic cells, 1,000 per mL, above 0
 */
public record TankSample(LocalDate date, double sccThousandPerMl) {
    public TankSample {
        Objects.requireNonNull(date, "date");
        if (!(sccThousandPerMl > 0 && sccThousandPerMl < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "sccThousandPerMl (" + sccThousandPerMl + ") must be above 0 and finite");
        }
    }
}
