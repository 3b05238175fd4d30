package org.pailbook.records.wire;

import java.util.OptionalInt;
import org.pailbook.records.problem.Problem;

/** Whole numbers in query parameters. */
public final class WholeNumbers {
    private static final int MOST_DIGITS = 9;

    private WholeNumbers() {}

    /** A whole number from {@code least} to {@code most}; empty when it was not given. */
    public static OptionalInt parameter(String name, String text, int least, int most) {
        if (text == null) {
            return OptionalInt.empty();
        }
        boolean digits = text.length() <= MOST_DIGITS && text.chars().allMatch(c -> c >= '0' && c <= '9');
        int value = digits && !text.isEmpty() ? Integer.parseInt(text) : -1;
        if (value < least || value > most) {
            throw Problem.badParameter(name, "expected a whole number from " + least + " to " + most, text);
        }
        return OptionalInt.of(value);
    }
}
