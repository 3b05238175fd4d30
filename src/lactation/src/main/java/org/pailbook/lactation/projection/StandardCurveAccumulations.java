package org.pailbook.lactation.projection;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.reference.TraitStandards;

/** The methods that add up a yield along a group's mean curve; those that need no such curve are in the accumulation package. */
public final class StandardCurveAccumulations {
    private StandardCurveAccumulations() {}

    /** All of them for one group of cows. */
    public static List<YieldAccumulation> all(TraitStandards standards) {
        return List.of(
                new InterpolationWithStandardCurves(standards),
                new BestPredictionToDate(standards),
                new MultipleTraitProcedure(standards));
    }

    public static Optional<YieldAccumulation> byId(String id, TraitStandards standards) {
        return all(standards).stream().filter(method -> method.id().equals(id)).findFirst();
    }
}
