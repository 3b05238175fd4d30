package org.pailbook.records.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/** Numbers as people type them, with a decimal point or comma, and as a field shows them again. */
final class TypedNumber {
    /** Text that could be a number; more digits than any scale or laboratory gives are a slip. */
    private static final String SHAPE = "[0-9]{1,6}([.,][0-9]{0,6})?|[.,][0-9]{1,6}";

    private TypedNumber() {}

    /** Empty if it is no number; two separators are none, since one of them would have to be guessed. */
    static Optional<Double> parse(String text) {
        return text.matches(SHAPE) ? Optional.of(Double.parseDouble(text.replace(',', '.'))) : Optional.empty();
    }

    /** All digits there are. */
    static String whole(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    static String rounded(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
