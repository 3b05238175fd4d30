package org.pailbook.lactation.summary;

import java.util.List;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.Measure;

/** A herd's measures of milk, of the cows in it, and of those that leave, each with what is counted over what. */
public final class HerdMeasures {
    private static final Citation COMMON =
            new Citation("Common practice", 2026, "in use under this name; no source", HowKnown.COMMON_PRACTICE);
    private static final Citation FETROW =
            new Citation("Fetrow, Nordlund and Norman", 2006, "J. Dairy Sci. 89:1896-1905, abstract", HowKnown.READ);

    public static final Measure MILK_MILKING_COWS = Measure.of(
            "milk-per-milking-cow",
            "Average milk of the cows in milk on the last test date",
            "milk of 24 hours, kg",
            "cows weighed on that day; cows not weighed are not counted as zero",
            COMMON);
    public static final Measure MILK_ALL_COWS = Measure.of(
            "milk-per-cow",
            "Average milk of all cows on the last test date, dry cows with zero",
            "milk of 24 hours, kg",
            "cows weighed on that day and cows dry on it",
            COMMON);
    public static final Measure ANNUALISED_MILK = Measure.of(
            "annualised-milk",
            "Average milk of all cows x 365: a snapshot and not a year",
            "milk of 24 hours x 365, kg",
            "cows weighed on that day and cows dry on it",
            COMMON);
    public static final Measure MILK_BY_STAGE = Measure.of(
            "milk-by-stage",
            "Average milk of the last test date by days in milk and lactation",
            "milk of 24 hours, kg",
            "cows of that lactation and stage weighed on that day; fewer than 3 have no average",
            COMMON);
    public static final Measure PERCENT_IN_MILK =
            Measure.of("percent-in-milk", "Share of the cows that are in milk", "cows in milk", "cows", COMMON);
    public static final Measure PERCENT_FIRST_LACTATION = Measure.of(
            "percent-first-lactation", "Share of first lactations", "cows in their first lactation", "cows", COMMON);
    public static final Measure PEAK = Measure.of(
            "peak-milk",
            "Average of the highest tests on days 5 to 120",
            "highest 24-hour weight on days 5 to 120, kg",
            "lactations with 3 tests or more that passed day 120 in the year",
            COMMON);
    public static final Measure PEAK_RATIO = Measure.of(
            "peak-first-to-mature",
            "Peak of first lactations against third and later ones; 0.75 is usual, no source",
            "average peak of first lactations, kg",
            "average peak of third and later lactations, kg",
            COMMON);
    public static final Measure MILK_305_COMPLETED = Measure.of(
            "milk-305-completed",
            "Average 305-day milk of lactations completed in the year, by test intervals",
            "milk of days 1 to 305, kg",
            "lactations that ended, or passed day 305, in the year",
            COMMON);
    public static final Measure MILK_305_PROJECTED = Measure.of(
            "milk-305-projected",
            "Average projected 305-day milk of cows in milk with a test",
            "projected milk of days 1 to 305, kg",
            "cows in milk with one test or more",
            COMMON);
    public static final Measure PERSISTENCY = Measure.of(
            "herd-persistency",
            "Average monthly persistency between the last two tests of cows on days 60 to 200",
            "percent kept in 30 days",
            "cows in milk whose last two tests lie on days 60 to 200",
            COMMON);
    public static final Measure TURNOVER = Measure.of(
            "herd-turnover",
            "Cows that left for each 100 cow-years",
            "cows that left in the time looked at",
            "cow-years at risk: days in the herd / 365.25, dry days included",
            FETROW);
    public static final Measure DEATH_RATE = Measure.of(
            "death-rate",
            "Cows that died or were put down for each 100 cow-years",
            "cows that died or were put down on the farm",
            "cow-years at risk: days in the herd / 365.25",
            FETROW);
    public static final Measure EARLY_EXITS = Measure.of(
            "exits-within-60-days",
            "Share of the cows that calved and left within 60 days",
            "left within 60 days of calving",
            "calvings in the time looked at that are 60 days ago or more",
            FETROW);

    public static final Measure AGE_AT_FIRST_CALVING = Measure.of(
            "age-at-first-calving",
            "Median age at the first calving",
            "first calvings of the year of animals whose birth is on record",
            "first calvings of the year",
            COMMON);
    public static final Measure STAYABILITY_TO_THIRD = Measure.of(
            "stayability-to-third-lactation",
            "Share of the cows that come from a first to a third calving: shares of the first and second lactations, multiplied",
            "first and second lactations followed by a calving",
            "first and second lactations that began 600 days ago or earlier and ended by a calving or an exit",
            new Citation(
                    "Kaplan and Meier",
                    1958,
                    "J. Am. Stat. Assoc. 53:457-481, product of the steps; lactations as steps are ours",
                    HowKnown.FROM_MEMORY));

    private HerdMeasures() {}

    public static List<Measure> all() {
        return List.of(
                MILK_MILKING_COWS,
                MILK_ALL_COWS,
                ANNUALISED_MILK,
                MILK_BY_STAGE,
                PERCENT_IN_MILK,
                PERCENT_FIRST_LACTATION,
                PEAK,
                PEAK_RATIO,
                MILK_305_COMPLETED,
                MILK_305_PROJECTED,
                PERSISTENCY,
                TURNOVER,
                DEATH_RATE,
                EARLY_EXITS,
                AGE_AT_FIRST_CALVING,
                STAYABILITY_TO_THIRD);
    }
}
