package org.pailbook.lactation.persistency;

import java.util.OptionalInt;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Rounding;

/**
 * The yield of a later hundred days as a percentage of that of the first hundred: {@code P2:1} for days 101 to 200, {@code P3:1} for days
 * 201 to 300.
 *
 * <p>Ratios go together with total yield (Gengler, Keown and Van Vleck, abstract): show it beside yield, never rank cows by it alone.
 *
 * @see "P2:1 and P3:1 from memory; the family of ratio measures in Gengler, N., Keown, J. F., Van Vleck, L. D. (1995)"
 */
public final class PeriodRatio implements PersistencyMeasure {
    public static final PeriodRatio P2_1 = new PeriodRatio("persistency-p2-1", 101, 200);
    public static final PeriodRatio P3_1 = new PeriodRatio("persistency-p3-1", 201, 300);

    private static final int FIRST_PERIOD_DAYS = 100;

    private final String id;
    private final int fromDaysInMilk;
    private final int toDaysInMilk;

    private PeriodRatio(String id, int fromDaysInMilk, int toDaysInMilk) {
        this.id = id;
        this.fromDaysInMilk = fromDaysInMilk;
        this.toDaysInMilk = toDaysInMilk;
    }

    @Override
    public double of(LactationCurve curve) {
        if (!isDefinedFor(curve)) {
            throw new IllegalArgumentException("curve (" + curve + ") must give milk in the first 100 days");
        }
        return 100 * curve.totalKg(fromDaysInMilk, toDaysInMilk) / curve.totalKg(1, FIRST_PERIOD_DAYS);
    }

    @Override
    public boolean isDefinedFor(LactationCurve curve) {
        return curve.totalKg(1, FIRST_PERIOD_DAYS) > 0;
    }

    @Override
    public String arithmetic(LactationCurve curve) {
        return "100 x " + Rounding.halfUp(curve.totalKg(fromDaysInMilk, toDaysInMilk), 1) + " kg of days "
                + fromDaysInMilk + " to " + toDaysInMilk + " / "
                + Rounding.halfUp(curve.totalKg(1, FIRST_PERIOD_DAYS), 1) + " kg of days 1 to 100";
    }

    @Override
    public String unit() {
        return "%";
    }

    @Override
    public OptionalInt lastDayNeeded() {
        return OptionalInt.of(toDaysInMilk);
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
                "Gengler, N., Keown, J. F., Van Vleck, L. D.",
                1995,
                "Rev. Bras. Genet. 18:237-243, ratio measures; periods from memory",
                HowKnown.FROM_MEMORY);
    }
}
