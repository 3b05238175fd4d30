package org.pailbook.lactation.sentence;

/**
 * A number in a sentence.
 *
 * @param decimals how many are told; {@link #ALL} as many as it has
 * @param isSigned whether a plus is written
 * @param unit empty text for none; {@code kg} may be told in another unit of weight
 * @param isUnitTold whether the unit is written after the number
 */
public record Amount(double value, int decimals, boolean isSigned, String unit, boolean isUnitTold) {
    public static final int ALL = -1;
    private static final String KG = "kg";

    /** A plain number. */
    public static Amount number(double value, int decimals) {
        return new Amount(value, decimals, false, "", false);
    }

    /** A number with its unit after it; without a unit if that is empty text. */
    public static Amount measured(double value, int decimals, String unit) {
        return new Amount(value, decimals, false, unit, !unit.isEmpty());
    }

    /** A weight in kg whose unit stands elsewhere in the sentence. */
    public static Amount weight(double kg, int decimals) {
        return new Amount(kg, decimals, false, KG, false);
    }

    /** The same with a plus where it is not below zero. */
    public Amount signed() {
        return new Amount(value, decimals, true, unit, isUnitTold);
    }

    public boolean isWeight() {
        return unit.equals(KG);
    }

    /** As it stands in English. */
    public String text() {
        String number = decimals == ALL ? Double.toString(value) : Rounding.halfUp(value, decimals);
        return (isSigned && value >= 0 ? "+" : "") + number + (isUnitTold ? " " + unit : "");
    }
}
