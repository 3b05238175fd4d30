package org.pailbook.lactation.figure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Rounding for display only: half up, as people round by hand. Nothing computed here is computed with again. */
public final class Rounding {
    private Rounding() {}

    /**
     * The number as text with that many decimals, a half rounded away from zero: 0.05 to one decimal is {@code 0.1}.
     *
     * @throws IllegalArgumentException if the number is not finite
     */
    public static String halfUp(double number, int decimals) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("number (" + number + ") must be finite");
        }
        // valueOf takes the shortest decimal form, so that a typed 0.05 is a half and not 0.05000000000000000277
        return BigDecimal.valueOf(number)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
