package org.pailbook.lactation.culling;

import java.util.List;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

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
        MILK_PRICE_LOWER(SentenceCode.MILK_PRICE_LOWER),
        MILK_PRICE_HIGHER(SentenceCode.MILK_PRICE_HIGHER),
        HEIFER_CHEAPER(SentenceCode.HEIFER_CHEAPER),
        HEIFER_DEARER(SentenceCode.HEIFER_DEARER),
        LEVEL_LOWER(SentenceCode.LEVEL_LOWER),
        LEVEL_HIGHER(SentenceCode.LEVEL_HIGHER);

        private final SentenceCode said;

        Change(SentenceCode said) {
            this.said = said;
        }

        public String words() {
            return Sentence.of(said).text();
        }

        public SentenceCode said() {
            return said;
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
