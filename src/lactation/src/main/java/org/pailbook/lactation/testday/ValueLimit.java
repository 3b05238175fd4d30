package org.pailbook.lactation.testday;

import java.util.Objects;
import java.util.OptionalDouble;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * One limit of a value, with its source.
 *
 * @param field what it limits, by its wire name such as {@code fatPct}
 * @param unit of the limits
 * @param layer what happens outside it
 * @param breeds for which breeds; {@link BreedGroup#UNKNOWN} means for any
 * @param least lowest value inside, absent if there is none
 * @param most highest value inside, absent if there is none
 * @param howKnown how its source came to us
 * @param source who set it
 */
public record ValueLimit(
        String field,
        String unit,
        Layer layer,
        BreedGroup breeds,
        OptionalDouble least,
        OptionalDouble most,
        HowKnown howKnown,
        String source) {

    /** What happens to a value outside. */
    public enum Layer {
        /** It cannot be right, most likely another unit was meant: refused at entry. */
        POSSIBLE,
        /** Kept and shown, but not used until somebody confirms it. */
        ACCEPTED,
        /** Used, and questioned. */
        USUAL
    }

    public ValueLimit {
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(layer, "layer");
        Objects.requireNonNull(breeds, "breeds");
        Objects.requireNonNull(howKnown, "howKnown");
        Objects.requireNonNull(source, "source");
        if (least.orElse(Double.NEGATIVE_INFINITY) > most.orElse(Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "least (" + least.getAsDouble() + ") must not be above most (" + most.getAsDouble() + ")");
        }
    }

    public boolean holds(double value) {
        return value >= least.orElse(Double.NEGATIVE_INFINITY) && value <= most.orElse(Double.POSITIVE_INFINITY);
    }

    /** {@code 1.5 to 9.0 %}, {@code at most 1000.0 d}. */
    public String words() {
        return said().text();
    }

    /** The same as a sentence. */
    public Sentence said() {
        if (least.isEmpty()) {
            return Sentence.of(SentenceCode.AT_MOST, amount(most.orElse(Double.POSITIVE_INFINITY)));
        }
        return most.isEmpty()
                ? Sentence.of(SentenceCode.AT_LEAST, amount(least.getAsDouble()))
                : Sentence.of(
                        SentenceCode.RANGE,
                        new Amount(least.getAsDouble(), Amount.ALL, false, unit, false),
                        amount(most.getAsDouble()));
    }

    /** A value in the limit's unit. */
    Amount amount(double value) {
        return Amount.measured(value, Amount.ALL, unit.equals("1") ? "" : unit);
    }
}
