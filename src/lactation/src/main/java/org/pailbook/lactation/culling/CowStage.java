package org.pailbook.lactation.culling;

/**
 * Where a cow stands at the start of a month: one state of the {@link CowValueTable}.
 *
 * @param parity 1 to 5; 5 stands for the fifth and later
 * @param monthInMilk 1 to 21, counted from calving; dry months count on
 * @param monthsPregnant 0 if open, else 1 to 9 starts of months since she conceived in months 3 to 12; she calves at the end of the ninth
 * @param milkClass 1 low, 2 herd mean, 3 high
 */
public record CowStage(int parity, int monthInMilk, int monthsPregnant, int milkClass) {
    public CowStage {
        if (parity < 1
                || parity > StageGrid.PARITIES
                || milkClass < 1
                || milkClass > StageGrid.CLASSES
                || !StageGrid.holds(monthInMilk, monthsPregnant)) {
            throw new IllegalArgumentException("no such stage: parity " + parity + ", month in milk " + monthInMilk
                    + ", months pregnant " + monthsPregnant + ", milk class " + milkClass);
        }
    }

    public boolean isDry() {
        return monthsPregnant >= StageGrid.FIRST_DRY_MONTH;
    }

    /** Open at the end of the table: the model knows no further month. */
    public boolean mustGo() {
        return monthInMilk == StageGrid.MONTHS && monthsPregnant == 0;
    }
}
