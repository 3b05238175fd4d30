package org.pailbook.lactation.udderhealth;

import java.util.List;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.Measure;

/** A herd's udder health by cell counts, each with what is counted over what. They count counts, not infections. */
public final class UdderHealthMeasures {
    private static final Citation QUEBEC = new Citation(
            "Quebec udder health benchmarks", 2014, "PMC4095961, abstract; year from memory", HowKnown.READ);
    private static final Citation COMMON =
            new Citation("Common practice", 2026, "in use under this name; no source", HowKnown.COMMON_PRACTICE);

    public static final Measure PREVALENCE = Measure.of(
            "cell-count-prevalence", "Share of the cows tested that are high", "tested and high", "tested", COMMON);
    public static final Measure NEW_INFECTION_RISK = Measure.of(
            "new-infection-risk",
            "Of the cows low at the test before, those high now; mean of Quebec herds 0.11",
            "low, then high",
            "low at the test before, tested both times",
            QUEBEC);
    public static final Measure CURE_RISK = Measure.of(
            "cure-risk",
            "Of the cows high at the test before, those low now; mean of Quebec herds 0.27",
            "high, then low",
            "high at the test before, tested both times",
            QUEBEC);
    public static final Measure CHRONIC_SHARE =
            Measure.of("chronic-share", "High at two tests in a row", "high, then high", "tested both times", COMMON);
    public static final Measure HEALTHY_OVER_DRY = Measure.of(
            "healthy-over-dry-period",
            "Low before dry-off and after calving; Quebec herds 0.70",
            "low, then low",
            "dry periods with a test on both sides",
            QUEBEC);
    public static final Measure CHRONIC_OVER_DRY = Measure.of(
            "chronic-over-dry-period",
            "High before dry-off and after calving; Quebec herds 0.03",
            "high, then high",
            "dry periods with a test on both sides",
            QUEBEC);
    public static final Measure NEW_IN_DRY = Measure.of(
            "new-in-dry-period",
            "Low before dry-off and high after calving; 10 % or less is a common goal, no source",
            "low, then high",
            "low before dry-off, with a test on both sides",
            COMMON);
    public static final Measure CURED_IN_DRY = Measure.of(
            "cured-in-dry-period",
            "High before dry-off and low after calving; 75 % or more is a goal from memory",
            "high, then low",
            "high before dry-off, with a test on both sides",
            COMMON);
    public static final Measure FRESH_HEIFERS_HIGH = Measure.of(
            "fresh-heifers-high",
            "Heifers high at their first test; under 10 % is a goal of the trade press, 25 to 35 % is common",
            "high at the first test",
            "first lactations with a first test on days 5 to 35",
            COMMON);

    private UdderHealthMeasures() {}

    public static List<Measure> all() {
        return List.of(
                PREVALENCE,
                NEW_INFECTION_RISK,
                CURE_RISK,
                CHRONIC_SHARE,
                HEALTHY_OVER_DRY,
                CHRONIC_OVER_DRY,
                NEW_IN_DRY,
                CURED_IN_DRY,
                FRESH_HEIFERS_HIGH);
    }
}
