package org.pailbook.records.store;

/** Numbers at fixed places of a text. */
final class FixedDigits {
    private static final int TEN = 10;

    private FixedDigits() {}

    /** The number made of the characters from one place to before another; -1 if one of them is no digit 0 to 9. */
    static int number(String text, int from, int to) {
        int number = 0;
        for (int i = from; i < to; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit >= TEN) {
                return -1;
            }
            number = number * TEN + digit;
        }
        return number;
    }
}
