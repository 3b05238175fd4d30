package org.pailbook.lactation.persistency;

import java.util.OptionalInt;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.curve.WoodCurve;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;

/**
 * Wood's persistency, {@code S = -(b + 1) ln c}, with b and c of Wood's curve in days. A pure number; higher is more persistent.
 *
 * <p>It depends on the unit of time: c per day only, never per week. Some print {@code c^-(b + 1)}, its exponential.
 *
 * @see "Wood, P. D. P. (1967). Nature 216:164-165 (from memory)"
 */
public final class WoodPersistency implements PersistencyMeasure {
    public static final WoodPersistency S = new WoodPersistency();

    private WoodPersistency() {}

    /**
     * The measure of known parameters.
     *
     * @param b how steeply the curve rises
     * @param c its decline per day, above 0
     * @throws IllegalArgumentException if c is not above 0
     */
    public static double s(double b, double c) {
        if (!(c > 0)) {
            throw new IllegalArgumentException("c (" + c + ") must be above 0");
        }
        return -(b + 1) * Math.log(c);
    }

    @Override
    public double of(LactationCurve curve) {
        if (!(curve instanceof WoodCurve wood)) {
            throw new IllegalArgumentException("curve (" + curve + ") must be a Wood curve");
        }
        return s(wood.b(), wood.c());
    }

    @Override
    public boolean isDefinedFor(LactationCurve curve) {
        return curve instanceof WoodCurve wood && wood.c() > 0;
    }

    @Override
    public String arithmetic(LactationCurve curve) {
        WoodCurve wood = (WoodCurve) curve;
        return "-(" + Rounding.halfUp(wood.b(), 4) + " + 1) ln " + Rounding.halfUp(wood.c(), 6);
    }

    @Override
    public String unit() {
        return "1";
    }

    @Override
    public OptionalInt lastDayNeeded() {
        return OptionalInt.empty();
    }

    @Override
    public String id() {
        return "persistency-wood-1967";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation("Wood, P. D. P.", 1967, "Nature 216:164-165", HowKnown.FROM_MEMORY);
    }
}
