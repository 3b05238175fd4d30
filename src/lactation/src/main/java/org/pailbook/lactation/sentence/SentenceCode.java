package org.pailbook.lactation.sentence;

import java.util.Locale;

/**
 * Everything that is said with values in it, with its English. Places are {@code %1$s} to {@code %9$s}; {@code %%} is a per cent sign. A code is never
 * reused for another meaning.
 *
 * <p>Sorted by what it is said of.
 */
public enum SentenceCode {
    // Any
    VERBATIM("%1$s"),

    // Lists of the breeding day
    NEVER_SERVED("Calved %1$s days ago and never served since; the waiting period ended %2$s."),
    SERVICES_SINCE_CALVING("%1$s services since calving did not take."),
    SERVICES_SINCE_THE_FIRST("%1$s services since the first did not take."),
    NOT_TO_BE_BRED("Not to be bred since %1$s, by the farm's choice; no reason recorded."),
    NOT_TO_BE_BRED_BECAUSE("Not to be bred since %1$s, by the farm's choice: %2$s."),
    TO_BREED_NOT_SERVED("Calved %1$s, %2$s days ago (waiting period %3$s days); not served since."),
    TO_BREED_OUTCOME_NOT_KNOWN(
            "Calved %1$s, %2$s days ago (waiting period %3$s days); last served %4$s, outcome not known: make sure she is open before she is served again."),
    TO_BREED_OPEN(
            "Calved %1$s, %2$s days ago (waiting period %3$s days); last served %4$s, found open or back in heat."),
    OUTCOME_NOT_KNOWN("Served %1$s, %2$s days ago, outcome not known."),
    PREGNANT_AND_SERVED_AGAIN("Found pregnant %1$s and served again %2$s."),
    PREGNANT_FOUND_ONCE("Pregnant since %1$s, found once, %2$s."),
    DUE_TO_DRY_OFF("Pregnant since %1$s, expected to calve %2$s; %3$s days dry before."),
    DUE_TO_CALVE("Pregnant since %1$s, expected to calve %2$s (95 of 100 from %3$s to %4$s)."),

    // Milk not for the tank
    TREATED_NO_END("Treated with %1$s on %2$s; no end of withholding was entered: treat her milk as withheld."),
    TREATED_UNTIL("Treated with %1$s on %2$s; withheld until %3$s, as entered."),
    FOREMILK_NOT_CLEARED("Foremilk of %1$s: %2$s, %3$s; not cleared since."),
    COLOSTRUM_BY_SETTING("Calved %1$s; the milk of that day and %2$s days after it stays out, by setting."),
    LEFT_FRONT("left front"),
    RIGHT_FRONT("right front"),
    LEFT_REAR("left rear"),
    RIGHT_REAR("right rear"),
    QUARTER_NOT_NAMED("a quarter not named"),
    MILK_NORMAL("normal"),
    MILK_CLOTS("flakes or clots"),
    MILK_WATERY("watery"),
    MILK_BLOOD("blood"),
    MILK_YELLOW("yellow or like serum"),
    NO_MILK("no milk"),

    // The tank's cells against a limit
    TANK_TOO_FEW_SAMPLES("Too few samples to judge. %1$s Ask your buyer or authority what follows."),
    NO_SAMPLE_FROM("No sample from %1$s to %2$s."),
    SAMPLES_OF("%1$s samples of %2$s."),
    NO_SAMPLE("No sample."),
    TANK_STANDS_AT("%1$s: %2$s thousand per mL; limit %3$s, %4$s. Ask your buyer or authority what follows."),
    MEAN_OF_MONTHS("Geometric mean of all %1$s samples of %2$s months"),
    LAST_OF_MEANS("Last of %1$s means of three samples"),
    SAMPLES_ABOVE("%1$s of the last %2$s samples above the limit; the last"),
    LAST_SAMPLE("Last sample, %1$s"),

    // Keep or replace
    REASON_MILK("milk %1$s %% of the mean of her group; typical 100 %%"),
    REASON_PREGNANT("%1$s months pregnant in month in milk %2$s; typical %3$s months pregnant"),
    REASON_OPEN("open in month in milk %1$s; typical %2$s months pregnant"),
    REASON_PERHAPS_PREGNANT("pregnant with a chance of %1$s %% in month in milk %2$s; typical %3$s months pregnant"),
    REASON_PARITY("parity %1$s; typical 2"),
    REASON_HEALTH("health as entered: %1$s cu a month, exits x %2$s; typical none"),
    PAYOFF_OF_CLASS("parity %1$s, %2$s, milk %3$s of the mean: %4$s %% of %5$s cu"),
    PAYOFF_PAST_TABLE("parity %1$s, month in milk %2$s, open, past the table: one month more"),
    WITH_CHANCE("%1$s, with a chance of %2$s %%"),
    STAGE_PREGNANT("month in milk %1$s, %2$s months pregnant"),
    STAGE_OPEN("month in milk %1$s, open"),
    STAGE_NOT_BRED_AGAIN("month in milk %1$s, open and not bred again"),
    OVER_MEAN_OF_GROUP("projected 305-day milk over the mean projection of her group"),
    MEAN_OVER_ALL_THAT_MAY_COME("a mean over all that may come; single cows differ widely"),
    RANGE_IN_ITS_PLACE("a range under changes of prices and milk level stands in its place"),
    MILK_PRICE_LOWER("milk price 20 %% lower"),
    MILK_PRICE_HIGHER("milk price 20 %% higher"),
    HEIFER_CHEAPER("heifer 20 %% cheaper"),
    HEIFER_DEARER("heifer 20 %% dearer"),
    LEVEL_LOWER("milk level lower by its standard error"),
    LEVEL_HIGHER("milk level higher by its standard error"),
    CONCEPTION_COUNTED_AS("conception in months 3 to 12; counted as month %1$s"),
    OPEN_IN_MONTH("open in month in milk %1$s"),
    TABLE_COVERS("open and bred to month 12, or not bred and to month 20; the rule of one month ahead stood in"),
    INSEMINATED_BY_CHANCE("inseminated; counted as pregnant with a chance of %1$s %%"),
    COUNTED_FROM("counted from %1$s"),
    DRY_COUNTED_AS("dry, counted as %1$s months pregnant"),
    COUNTED_AS_OPEN("neither insemination nor check on record; counted as open"),
    CALVED("calved %1$s"),
    CALVED_THEN_CONCEIVED("calved %1$s, conceived or inseminated %2$s"),
    CALVING_THEN_CONCEPTION("calving, then conception, not after %1$s"),
    NO_TEST_DAY("no test day"),
    GIVEN_WITHOUT_TEST_DAYS("given without test days"),

    // Parts of figures
    DAYS_AT_MEAN("days %1$s to %2$s: %3$s d x (%4$s + %5$s) / 2 %6$s"),
    DAYS_AT("days %1$s to %2$s: %3$s d x %4$s %5$s"),
    PERCENT_OF_MILK("100 x %1$s / %2$s %3$s"),
    PERCENT_UNROUNDED("100 x %1$s over milk, unrounded"),
    MEAN_OF_GROUP("mean of her group, %1$s, days 1 to %2$s"),
    GROUP_OF_PARITY("%1$s, parity %2$s"),
    GROUP_FROM_PARITY("%1$s, parity %2$s or more"),
    TEST_ON("test on %1$s, day %2$s: %3$s"),
    AGAINST_EXPECTED("%1$s %2$s %3$s against %4$s expected, %5$s x %6$s"),
    TRAIT_MILK("milk"),
    TRAIT_FAT("fat"),
    TRAIT_PROTEIN("protein"),
    TRAIT_CELLS("cells"),
    SCORE("score"),
    ONE_COW("1 cow"),
    COWS("%1$s cows"),
    DAYS_IN_MILK_OF("days in milk of %1$s in milk, %2$s d, divided by %3$s"),
    MILK_OF("milk of %1$s"),
    MILK_OF_DIVIDED("milk of %1$s divided by %2$s"),
    SCORES_OF("scores of %1$s, divided by %2$s"),
    PROJECTIONS_OF("projections of %1$s in milk, divided by %2$s"),
    SAMPLED_BY_MILK("%1$s sampled, weighted by milk"),
    SHARE_OF("%1$s of %2$s, in percent"),

    // Why there is no interval
    NO_INTERVAL_BY_METHOD("this method gives no interval"),
    OF_THE_COWS_THERE_ARE("of the cows there are; nothing is claimed of other cows"),
    RATIO_OF_PREDICTIONS("a ratio of two predictions; its error is not worked out"),
    COUNT_OF_DAYS("a count of days"),
    MEAN_OF_COWS_TESTED("a mean of measured values of the cows tested"),
    MEASURED_ON_TESTED("measured on the cows tested; cows not tested are not in it"),
    MEASURED_ON_SAMPLED("measured on the cows sampled; cows not sampled are not in it"),
    TEST_INTERVAL_NO_ERROR("the test interval method carries no error of its own"),
    NO_VALUE("no value"),

    // Seen and expected in findings
    DAY("day %1$s"),
    DAY_OR_BEFORE("day %1$s or before"),
    DAY_OF("day %1$s of %2$s"),
    DAYS_AGO("%1$s days ago"),
    DAYS_WITHOUT_TEST("%1$s days without a test"),
    AT_MOST_DAYS("at most %1$s days"),
    OF_TESTS("%1$s of %2$s tests"),
    ONE_TEST_DAY("1 test day"),
    TEST_DAYS("%1$s test days"),
    LACTATIONS_AND_TEST_DAYS("%1$s lactations, %2$s test days"),
    ERRORS_OF_OPEN_DATA("errors of 109 lactations of open data"),
    ERRORS_OF_HERD("errors of %1$s past projections of this herd, and 109 lactations of open data"),
    PARITY("parity %1$s"),
    CALVINGS_ON("calvings on %1$s and %2$s"),
    AT_LEAST_DAYS_BETWEEN("at least %1$s days between two"),
    ONE_DRY_OFF("one dry-off, %1$s"),
    NOTHING_AFTER("nothing after %1$s"),
    MILKINGS_OF("%1$s of %2$s milkings"),
    MILKINGS_WEIGHED("%1$s of %2$s milkings weighed"),
    ALL_WEIGHED("all weighed"),
    ALL_WEIGHED_OR_PAIRED("all weighed, or %1$s cow-days of the herd with both milkings"),
    SHARE_LEARNED("1 of 2 milkings, share learned from %1$s cow-days"),
    SESSION_OF_MILKINGS("%1$s of %2$s milkings"),
    ONE_OF_TWO("AM or PM of two"),
    POSTED_AND_MILKINGS("%1$s posted, %2$s from milkings"),
    POSTED_AND_PART("%1$s posted, milkings of a part of the day"),
    ABOUT("about %1$s"),
    ABOUT_AT_LIMIT("about %1$s; at the limit %2$s"),
    AFTER_TEST("%1$s after %2$s on %3$s"),
    FROM_TEST_BEFORE("%1$s from the test before"),
    RANGE("%1$s to %2$s"),
    AT_MOST("at most %1$s"),
    AT_LEAST("at least %1$s"),
    BY_SOURCE("%1$s, %2$s"),
    OF("%1$s of %2$s"),
    NONE("none"),
    STANDARD_FOR("a standard for %1$s"),
    OVER_COWS("%1$s over %2$s cows"),
    A_DAY_IN_MONTH("%1$s a day of %2$s for calvings in %3$s"),
    IN_MONTH("%1$s of %2$s for calvings in %3$s"),
    TIMES_TEST_BEFORE("%1$s times the test before, %2$s cows"),
    ABOUT_AS_BEFORE("about as much as the test before; 2.1 to 2.3 or .43 to .48 points at pounds"),
    COWS_FAR_BELOW("%1$s of %2$s cows far below"),
    COWS_FAR_ABOVE("%1$s of %2$s cows far above"),
    MOST_COWS_OUTSIDE("at most %1$s %% of cows outside 60 to 150 %% of what their test before leads to expect"),
    AND_OTHER_COW("%1$s; the other cow %2$s"),
    ABOUT_AND_OTHER_COW("about %1$s; the other cow about %2$s"),
    COWS_AGAINST_TANK("cows %1$s, tank and other uses %2$s, %3$s %%: %4$s"),
    LOOK_WHERE("look where it comes from"),
    EXPLAIN_BEFORE("explain it before the test is held against the tank"),
    TEST_DAY_SUSPECT("the test day is suspect"),
    AT_MOST_3_PERCENT_APART("at most 3 %% apart");

    private final String english;

    SentenceCode(String english) {
        this.english = english;
    }

    /** Stable, kebab-case. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** With its places. */
    public String english() {
        return english;
    }
}
