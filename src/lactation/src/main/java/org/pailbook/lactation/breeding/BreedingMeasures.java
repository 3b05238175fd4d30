package org.pailbook.lactation.breeding;

import java.util.List;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.Measure;

/** A herd's breeding measures, each with what is counted over what. */
public final class BreedingMeasures {
    private static final Citation COMMON =
            new Citation("Common practice", 2026, "in use under this name; no source", HowKnown.COMMON_PRACTICE);
    private static final Citation NEBEL = new Citation(
            "Nebel; Penn State extension",
            2003,
            "share of eligible cows that conceive in 21 days; eligibility by days at risk is ours",
            HowKnown.READ);

    public static final Measure PREGNANCY_RATE_21 = Measure.of(
            "pregnancy-rate-21",
            "Share of the cows that could, that became pregnant in 21 days",
            "eligible cow-cycles with a conception",
            "eligible cow-cycles of which it is known",
            NEBEL);
    public static final Measure INSEMINATION_RISK = Measure.of(
            "insemination-risk-21",
            "Share of the cows that could, that were served in 21 days",
            "eligible cow-cycles with a service after the waiting period",
            "eligible cow-cycles",
            NEBEL);
    public static final Measure PREGNANCIES_PER_COW_CYCLE = Measure.of(
            "pregnancies-per-100-cow-cycles",
            "Pregnancies by days at risk; uses every cow, best for fewer than 40",
            "pregnancies at risk",
            "days at risk / 21",
            new Citation("Pailbook", 2026, "21 x pregnancies / cow-days at risk", HowKnown.OURS));
    public static final Measure CONCEPTION_RISK = Measure.of(
            "conception-risk",
            "Share of services that took",
            "services found to have taken",
            "services whose outcome is known, old enough to have been checked",
            COMMON);
    public static final Measure SERVICES_PER_CONCEPTION = Measure.of(
            "services-per-conception",
            "Services of cows that conceived, for each conception",
            "services since calving of cows that conceived, up to it",
            "conceptions",
            COMMON);
    public static final Measure SERVICES_PER_CONCEPTION_STRICT = Measure.of(
            "services-per-conception-all-cows",
            "All services for each conception, those of cows that did not conceive too",
            "services whose outcome is known, old enough to have been checked",
            "conceptions of them",
            COMMON);
    public static final Measure DAYS_TO_FIRST_SERVICE = Measure.of(
            "days-to-first-service",
            "Days from calving to the first service",
            "days from calving to the first service",
            "cows first served in the time looked at",
            COMMON);
    public static final Measure MEAN_DAYS_OPEN = Measure.of(
            "mean-days-open",
            "Days from calving to conception, of cows that conceived",
            "days from calving to conception",
            "cows that conceived in the time looked at and were not found to have lost it",
            COMMON);
    public static final Measure MEAN_DAYS_OPEN_SO_FAR = Measure.of(
            "mean-days-open-so-far",
            "Days since calving of cows past the waiting period and not found pregnant",
            "days since calving",
            "such cows in the herd on the day, those not to be bred apart",
            COMMON);
    public static final Measure PROJECTED_CALVING_INTERVAL = Measure.of(
            "projected-calving-interval",
            "From the last calving to the one expected, of cows pregnant now",
            "days open plus the gestation of the breed",
            "cows found pregnant, in the herd on the day",
            COMMON);
    public static final Measure CALVING_INTERVAL = Measure.of(
            "calving-interval",
            "From one calving to the next; heifers and cows that left before calving again are not in it",
            "days from the calving before",
            "calvings in the time looked at by cows that calved before",
            COMMON);
    public static final Measure PREGNANCY_LOSS = Measure.of(
            "pregnancy-loss",
            "Share of the pregnancies found that were lost",
            "found open again or aborted",
            "pregnancies first found in the time looked at",
            COMMON);

    private BreedingMeasures() {}

    public static List<Measure> all() {
        return List.of(
                PREGNANCY_RATE_21,
                INSEMINATION_RISK,
                PREGNANCIES_PER_COW_CYCLE,
                CONCEPTION_RISK,
                SERVICES_PER_CONCEPTION,
                SERVICES_PER_CONCEPTION_STRICT,
                DAYS_TO_FIRST_SERVICE,
                MEAN_DAYS_OPEN,
                MEAN_DAYS_OPEN_SO_FAR,
                PROJECTED_CALVING_INTERVAL,
                CALVING_INTERVAL,
                PREGNANCY_LOSS);
    }
}
