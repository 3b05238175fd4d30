package org.pailbook.lactation.persistency;

import java.util.OptionalInt;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;

/**
 * What the curve loses from day 60 to day 280: as {@code y280 - y60} in kg per day, below 0 for a falling curve, or as {@code 100 y280 /
 * y60} in percent.
 *
 * @see "Jamrozik, J. et al. (1998). Interbull Bull. 17: slope after the peak (extract read; days from memory)"
 */
public final class Decline implements PersistencyMeasure {
    public static final Decline KG_60_TO_280 = new Decline("persistency-decline-60-280", false);
    public static final Decline PCT_60_TO_280 = new Decline("persistency-decline-ratio-60-280", true);

    private static final int EARLY_DAY = 60;
    private static final int LATE_DAY = 280;

    private final String id;
    private final boolean isRatio;

    private Decline(String id, boolean isRatio) {
        this.id = id;
        this.isRatio = isRatio;
    }

    @Override
    public double of(LactationCurve curve) {
        if (!isDefinedFor(curve)) {
            throw new IllegalArgumentException("curve (" + curve + ") must be above 0 kg on day " + EARLY_DAY);
        }
        double early = curve.milkKgPerDay(EARLY_DAY);
        double late = curve.milkKgPerDay(LATE_DAY);
        return isRatio ? 100 * late / early : late - early;
    }

    @Override
    public boolean isDefinedFor(LactationCurve curve) {
        return !isRatio || curve.milkKgPerDay(EARLY_DAY) > 0;
    }

    @Override
    public String arithmetic(LactationCurve curve) {
        String late = Rounding.halfUp(curve.milkKgPerDay(LATE_DAY), 2) + " kg on day " + LATE_DAY;
        String early = Rounding.halfUp(curve.milkKgPerDay(EARLY_DAY), 2) + " kg on day " + EARLY_DAY;
        return isRatio ? "100 x " + late + " / " + early : late + " - " + early;
    }

    @Override
    public String unit() {
        return isRatio ? "%" : "kg/d";
    }

    @Override
    public OptionalInt lastDayNeeded() {
        return OptionalInt.of(LATE_DAY);
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Jamrozik, J. et al.", 1998, "Interbull Bull. 17, slope after the peak", HowKnown.FROM_MEMORY);
    }
}
