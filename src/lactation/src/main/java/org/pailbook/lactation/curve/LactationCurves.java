package org.pailbook.lactation.curve;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;

/** Every lactation curve of this library, with the way it is fitted. The list is stable in its ids and may grow. */
public final class LactationCurves {
    /** Wood 1967, least squares on kg. */
    public static final CurveModel WOOD = new WoodModel();

    /** Wilmink 1987, {@code k} = 0.05. */
    public static final CurveModel WILMINK = new WilminkModel();

    /** Wood 1967, least squares on logarithms. */
    public static final CurveModel WOOD_LOG_LINEAR = new WoodLogLinearModel();

    /** Wilmink 1987, {@code k} fitted as well. */
    public static final CurveModel WILMINK_FREE_RATE = new WilminkFreeRateModel();

    /** Ali and Schaeffer 1987. */
    public static final CurveModel ALI_SCHAEFFER = new AliSchaefferModel();

    /** Normalized Legendre polynomials of order 3, days 5 to 305. */
    public static final CurveModel LEGENDRE_3 = legendre(3);

    /** Normalized Legendre polynomials of order 4, days 5 to 305. */
    public static final CurveModel LEGENDRE_4 = legendre(4);

    /** Normalized Legendre polynomials of order 5, days 5 to 305. */
    public static final CurveModel LEGENDRE_5 = legendre(5);

    /** Dijkstra and others 1997. */
    public static final CurveModel DIJKSTRA = new DijkstraModel();

    /** Nelder 1966. */
    public static final CurveModel NELDER = new NelderModel();

    /** Cobby and Le Du 1978. */
    public static final CurveModel COBBY_LE_DU = new CobbyLeDuModel();

    /** Guo and Swalve 1995. */
    public static final CurveModel GUO_SWALVE = new GuoSwalveModel();

    /**
     * Smoothing for monthly tests, days cubed. Ours, weighed on 144 open lactations with one test at a time left out: the error
     * at inner tests is 2.45 kg here, 2.39 at best (300,000 to 500,000) and 2.80 at 1,000; at the end tests 3.85, 3.70 and 4.50
     * kg. More smoothing than this takes the rise away with the noise: a peak is left in 23 lactations at 300,000, in 52 here, in
     * 99 with Wood's curve.
     */
    public static final double USUAL_SMOOTHING_DAYS3 = 30_000;

    /** Smoothing spline (Reinsch 1967) with a smoothing of {@link #USUAL_SMOOTHING_DAYS3}. */
    public static final CurveModel SMOOTHING_SPLINE = new NaturalSplineModel(USUAL_SMOOTHING_DAYS3);

    private static final List<CurveModel> ALL = List.of(
            WOOD,
            WILMINK,
            WOOD_LOG_LINEAR,
            WILMINK_FREE_RATE,
            ALI_SCHAEFFER,
            LEGENDRE_3,
            LEGENDRE_4,
            LEGENDRE_5,
            DIJKSTRA,
            NELDER,
            COBBY_LE_DU,
            GUO_SWALVE,
            SMOOTHING_SPLINE);

    private static CurveModel legendre(int order) {
        return new LegendreModel(order, DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM, DaysInMilk.STANDARD_LACTATION_DAYS);
    }

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
