package org.pailbook.lactation.culling;

import java.util.List;

/**
 * How far the pay-off moves if one thing at a time is other than taken: milk price or heifer price 20 % lower or higher, milk level off by its
 * standard error. It is no interval of any probability.
 *
 * @param lowCu the lowest of all, the pay-off itself among them
 * @param highCu the highest
 * @param shifts each change and the pay-off under it
 */
public record PayoffRange(double lowCu, double highCu, List<Shift> shifts) {
    public PayoffRange {
        shifts = List.copyOf(shifts);
    }

    /** One thing changed. */
    public enum Change {
        MILK_PRICE_LOWER("milk price 20 % lower"),
        MILK_PRICE_HIGHER("milk price 20 % higher"),
        HEIFER_CHEAPER("heifer 20 % cheaper"),
        HEIFER_DEARER("heifer 20 % dearer"),
        LEVEL_LOWER("milk level lower by its standard error"),
        LEVEL_HIGHER("milk level higher by its standard error");

        private final String words;

        Change(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        boolean isOfPrice() {
            return compareTo(LEVEL_LOWER) < 0;
        }
    }

    /** The pay-off under one change, cu. */
    public record Shift(Change change, double payoffCu) {}

    static PayoffRange of(double payoffCu, List<Shift> shifts) {
        double low = payoffCu;
        double high = payoffCu;
        for (Shift shift : shifts) {
            low = Math.min(low, shift.payoffCu());
            high = Math.max(high, shift.payoffCu());
        }
        return new PayoffRange(low, high, shifts);
    }
}
