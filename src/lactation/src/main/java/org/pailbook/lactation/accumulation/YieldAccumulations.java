package org.pailbook.lactation.accumulation;

import java.util.List;
import java.util.Optional;

/** The methods of this package that add up a yield from test days. */
public final class YieldAccumulations {
    private static final List<YieldAccumulation> ALL = List.of(
            TestIntervalMethod.STANDARD_305,
            TestIntervalMethod.WHOLE_LACTATION,
            TestIntervalPercentInterpolated.STANDARD_305,
            TestIntervalPercentInterpolated.WHOLE_LACTATION);

    private YieldAccumulations() {}

    public static List<YieldAccumulation> all() {
        return ALL;
    }

    public static Optional<YieldAccumulation> byId(String id) {
        return ALL.stream().filter(method -> method.id().equals(id)).findFirst();
    }
}
