package org.pailbook.lactation.persistency;

import java.util.List;
import java.util.Optional;

/** The measures of persistency that are read off a lactation curve. */
public final class PersistencyMeasures {
    private static final List<PersistencyMeasure> ALL =
            List.of(PeriodRatio.P2_1, PeriodRatio.P3_1, WoodPersistency.S, Decline.KG_60_TO_280, Decline.PCT_60_TO_280);

    private PersistencyMeasures() {}

    public static List<PersistencyMeasure> all() {
        return ALL;
    }

    public static Optional<PersistencyMeasure> byId(String id) {
        return ALL.stream().filter(measure -> measure.id().equals(id)).findFirst();
    }
}
