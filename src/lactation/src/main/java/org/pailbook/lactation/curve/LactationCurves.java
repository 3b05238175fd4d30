package org.pailbook.lactation.curve;

import java.util.List;
import java.util.Optional;

/** Every lactation curve of this library, with the way it is fitted. The list is stable in its ids and may grow. */
public final class LactationCurves {
    /** Wood 1967, least squares on kg. */
    public static final CurveModel WOOD = new WoodModel();

    /** Wilmink 1987, {@code k} = 0.05. */
    public static final CurveModel WILMINK = new WilminkModel();

    private static final List<CurveModel> ALL = List.of(WOOD, WILMINK);

    private LactationCurves() {}

    /** All of them, the most used first. */
    public static List<CurveModel> all() {
        return ALL;
    }

    /** The model with that {@link CurveModel#id()}. */
    public static Optional<CurveModel> byId(String id) {
        return ALL.stream().filter(model -> model.id().equals(id)).findFirst();
    }
}
