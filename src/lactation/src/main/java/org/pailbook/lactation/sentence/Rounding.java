package org.pailbook.lactation.sentence;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Rounding for display only: half up, as people round by hand. Nothing computed here is computed with again. */
public final class Rounding {
    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** Scaled numbers below this are rounded in long arithmetic; a double holds their fraction to better than 1e-6. */
    private static final double LARGEST_FAST = 1e9;

    /** So near to a half the shortest decimal form decides, not the binary fraction. */
    private static final double NEAR_HALF = 1e-5;

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
        // explanations write thousands of small numbers; the plain form below gives the same text
        if (decimals >= 0 && decimals < POWERS.length) {
            double scaled = Math.abs(number) * POWERS[decimals];
            double fraction = scaled - Math.floor(scaled);
            if (scaled < LARGEST_FAST && Math.abs(fraction - 0.5) > NEAR_HALF) {
                return text(number < 0, Math.round(scaled), decimals);
            }
        }
        return plain(number, decimals);
    }

    private static String text(boolean isNegative, long scaled, int decimals) {
        StringBuilder text = new StringBuilder();
        if (isNegative && scaled != 0) {
            text.append('-');
        }
        text.append(scaled / POWERS[decimals]);
        if (decimals > 0) {
            text.append('.');
            String rest = Long.toString(scaled % POWERS[decimals]);
            for (int i = rest.length(); i < decimals; i++) {
                text.append('0');
            }
            text.append(rest);
        }
        return text.toString();
    }

    static String plain(double number, int decimals) {
        // valueOf takes the shortest decimal form, so that a typed 0.05 is a half and not 0.05000000000000000277
        return BigDecimal.valueOf(number)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
