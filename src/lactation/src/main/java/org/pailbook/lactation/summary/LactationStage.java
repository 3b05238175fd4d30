package org.pailbook.lactation.summary;

/** Bands of days in milk for a herd's milk by stage; ours. */
public enum LactationStage {
    TO_40(0, 40),
    TO_100(41, 100),
    TO_199(101, 199),
    TO_304(200, 304),
    FROM_305(305, Integer.MAX_VALUE);

    private final int fromDaysInMilk;
    private final int toDaysInMilk;

    LactationStage(int fromDaysInMilk, int toDaysInMilk) {
        this.fromDaysInMilk = fromDaysInMilk;
        this.toDaysInMilk = toDaysInMilk;
    }

    /** @param daysInMilk 0 or more */
    public static LactationStage of(int daysInMilk) {
        for (LactationStage stage : values()) {
            if (daysInMilk <= stage.toDaysInMilk) {
                return stage;
            }
        }
        return FROM_305;
    }

    public String wireName() {
        return toDaysInMilk == Integer.MAX_VALUE ? fromDaysInMilk + "+" : fromDaysInMilk + "-" + toDaysInMilk;
    }
}
