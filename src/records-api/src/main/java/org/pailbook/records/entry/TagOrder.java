package org.pailbook.records.entry;

import java.math.BigInteger;
import java.util.Comparator;
import java.util.Locale;

/** Texts with numbers in them in the order people expect: 9 before 10, B-2 before B-11. */
final class TagOrder implements Comparator<String> {
    static final TagOrder BY_NUMBERS = new TagOrder();
    private static final String BORDERS = "(?<=\\d)(?=\\D)|(?<=\\D)(?=\\d)";

    private TagOrder() {}

    @Override
    public int compare(String one, String other) {
        String[] a = one.toLowerCase(Locale.ROOT).split(BORDERS);
        String[] b = other.toLowerCase(Locale.ROOT).split(BORDERS);
        for (int i = 0; i < Math.min(a.length, b.length); i++) {
            int parts = isNumber(a[i]) && isNumber(b[i])
                    ? new BigInteger(a[i]).compareTo(new BigInteger(b[i]))
                    : a[i].compareTo(b[i]);
            if (parts != 0) {
                return parts;
            }
        }
        return a.length == b.length ? one.compareTo(other) : Integer.compare(a.length, b.length);
    }

    private static boolean isNumber(String part) {
        return part.chars().allMatch(c -> c >= '0' && c <= '9') && !part.isEmpty();
    }
}
