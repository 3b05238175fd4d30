package org.pailbook.lactation.finding;

/**
 * Every kind of finding, with the stable code used outside this library. A code is never reused for another meaning.
 *
 * <p>Sorted by subject. The meaning is one sentence without figures; figures stand in the {@link Finding}.
 */
public enum FindingCode {
    // Test days and the lactation they belong to
    NO_TEST_DAYS("no-test-days", Severity.BLOCKS, "No usable test day up to the as-of date."),
    TEST_BEFORE_CALVING(
            "test-before-calving",
            Severity.NOTES,
            "A test on or before the calving day takes no part in this lactation."),
    TEST_AFTER_END("test-after-end", Severity.NOTES, "A test after the end of the lactation takes no part in it."),
    TEST_ON_COLOSTRUM_DAYS(
            "test-on-colostrum-days", Severity.NOTES, "A test on days 1 to 4 is shown but not used for yields."),
    DUPLICATE_TEST_DAY(
            "duplicate-test-day", Severity.NOTES, "Two tests on one day count once; the later entry is used."),
    MILK_MISSING("milk-missing", Severity.WEAKENS, "A test day without a milk weight is left out of milk sums."),
    FAT_MISSING("fat-missing", Severity.WEAKENS, "Fat was not measured on at least one test day."),
    PROTEIN_MISSING("protein-missing", Severity.WEAKENS, "Protein was not measured on at least one test day."),
    LACTOSE_ASSUMED("lactose-assumed", Severity.NOTES, "Lactose was not measured; the standard percentage stood in."),
    OUT_OF_RANGE("out-of-range", Severity.WEAKENS, "A value outside the accepted range is kept but not used."),
    IMPLAUSIBLE("implausible", Severity.WEAKENS, "A value outside the usual range is used; check it."),

    // Counts and shares
    NOTHING_TO_COUNT("nothing-to-count", Severity.BLOCKS, "There is nothing to count it over; that is not zero."),
    SMALL_NUMBER("small-number", Severity.WEAKENS, "Few to count: read the count, the percentage is mostly chance."),

    TOO_FEW_FOR_MEAN("too-few-for-mean", Severity.BLOCKS, "Too few cows for an average; look at the cows themselves."),

    // Breeding
    SERVICES_NEEDED("services-needed", Severity.BLOCKS, "No service is on record for this; enter services."),
    PREGNANCY_CHECKS_NEEDED(
            "pregnancy-checks-needed", Severity.BLOCKS, "No outcome of a service is on record; it needs checks."),
    WAITING_PERIOD_ASSUMED(
            "waiting-period-assumed", Severity.NOTES, "No voluntary waiting period is set; a usual one stood in."),
    OUTCOME_PENDING(
            "outcome-pending",
            Severity.BLOCKS,
            "Too many services of these days have no known outcome yet; a rate would be wrong."),
    OUTCOME_UNKNOWN(
            "outcome-unknown", Severity.WEAKENS, "Services without a known outcome take no part; check these cows."),
    CYCLES_LEFT_OUT(
            "cycles-left-out", Severity.WEAKENS, "Cycles with too many outcomes unknown are left out of the rate."),
    OUTSIDE_COUNTED_CYCLES(
            "outside-counted-cycles",
            Severity.NOTES,
            "Pregnancies of too few days at risk, or before the waiting period's end, are not in the rate."),
    CONCEPTION_INFERRED(
            "conception-inferred", Severity.WEAKENS, "The conception was worked out from a calving, not from a check."),
    CONCEPTION_DATE_UNKNOWN(
            "conception-date-unknown",
            Severity.BLOCKS,
            "She was found pregnant and nothing on record tells since when; ask for the age of the pregnancy."),
    GESTATION_ASSUMED(
            "gestation-assumed", Severity.WEAKENS, "No gestation length is known for her breed; a usual one stood in."),
    SERVED_WHILE_PREGNANT(
            "served-while-pregnant",
            Severity.WEAKENS,
            "She was served after she was found pregnant; check her before anything is done."),
    OPEN_COWS_LEFT_OUT(
            "open-cows-left-out",
            Severity.WEAKENS,
            "Cows not yet pregnant are not in this mean, so it is too low; read the time to pregnancy beside it."),
    NOT_HALF_PREGNANT(
            "not-half-pregnant", Severity.BLOCKS, "Fewer than half are pregnant by the last day known: no median."),

    // Herds
    NO_COWS_IN_MILK("no-cows-in-milk", Severity.BLOCKS, "No cow is in milk on the as-of date."),
    SCC_MISSING("scc-missing", Severity.WEAKENS, "Somatic cells were not counted for at least one cow."),

    // Accumulated yield
    LONG_INTERVAL("long-interval", Severity.WEAKENS, "Two tests lie further apart than a straight line should bridge."),
    FIRST_TEST_LATE(
            "first-test-late", Severity.WEAKENS, "The first test came late; the days before it were not weighed."),
    ESTIMATED_END("estimated-end", Severity.WEAKENS, "The end of the lactation was not recorded and is estimated."),

    FIRST_TEST_TOO_LATE(
            "first-test-too-late",
            Severity.BLOCKS,
            "The first test came too late for its weight to stand for the days before it."),

    // Lactations from events
    NO_CALVING("no-calving", Severity.BLOCKS, "No calving is on record up to the as-of date."),
    DUPLICATE_CALVING(
            "duplicate-calving", Severity.NOTES, "Two calvings too close to be two are one; the earlier day counts."),
    PARITY_COUNTED(
            "parity-counted", Severity.NOTES, "No parity is on record; it is counted from the first calving known."),
    PARITY_CONTRADICTS(
            "parity-contradicts", Severity.WEAKENS, "The parity on record does not follow from the calvings."),
    ABORTION_COUNTED("abortion-counted", Severity.NOTES, "An abortion was taken as the start of a lactation."),
    ABORTION_NOT_COUNTED("abortion-not-counted", Severity.NOTES, "An abortion did not start a lactation."),
    DRY_OFF_MISSING("dry-off-missing", Severity.WEAKENS, "She calved again and no dry-off is on record before it."),
    DRY_OFF_REPEATED("dry-off-repeated", Severity.NOTES, "More than one dry-off in a lactation; the last one counts."),
    EVENT_OUTSIDE_LACTATIONS(
            "event-outside-lactations", Severity.NOTES, "This belongs to no lactation on record; it is kept."),
    EVENT_AFTER_DEPARTURE(
            "event-after-departure", Severity.WEAKENS, "Something is on record after the day she left; both are kept."),

    // The day's yield from single milkings
    MILKING_NEEDED("milking-needed", Severity.BLOCKS, "No milking of that day was weighed."),
    MILKING_FACTOR_UNKNOWN(
            "milking-factor-unknown", Severity.BLOCKS, "No factor is known that brings this milking to 24 hours."),
    PART_OF_DAY_WEIGHED(
            "part-of-day-weighed", Severity.WEAKENS, "Not all milkings of the day were weighed; the error is larger."),
    PART_OF_DAY_SAMPLED(
            "part-of-day-sampled", Severity.WEAKENS, "Not all milkings of the day were sampled; fat depends on which."),
    MILKING_HOURS_UNKNOWN(
            "milking-hours-unknown", Severity.NOTES, "Hours between milkings are not on record; they count as 24."),

    SUMMED_FROM_MILKINGS(
            "summed-from-milkings", Severity.NOTES, "This test day was made from single milkings; it was not posted."),
    POSTED_TEST_DAY_WINS(
            "posted-test-day-wins", Severity.NOTES, "A test day was posted for a day with milkings; its milk is used."),
    MILK_FROM_MILKINGS(
            "milk-from-milkings", Severity.NOTES, "The test day posted has no weight; milkings of that day gave it."),
    MILKINGS_NOT_SUMMED(
            "milkings-not-summed", Severity.WEAKENS, "Milkings of a day do not make 24 hours; the day takes no part."),

    // Abnormal test days
    MILK_CHANGE("milk-change", Severity.WEAKENS, "Milk changed much since the test before; it is used, check it."),
    TEST_BELOW_EXPECTED(
            "test-below-expected", Severity.WEAKENS, "A test is far below what the test before it leads to expect."),
    TEST_ABOVE_EXPECTED(
            "test-above-expected", Severity.WEAKENS, "A test is far above what the test before it leads to expect."),
    TEST_NOT_CREDIBLE("test-not-credible", Severity.WEAKENS, "A test is so far off that it is better left out."),

    // A herd's test day as a whole
    UNIT_DOUBTFUL(
            "unit-doubtful",
            Severity.WEAKENS,
            "The herd's mean is that of the test before in pounds, or the other way round: lb or kg?"),
    WHOLE_TEST_DAY_OFF(
            "whole-test-day-off",
            Severity.WEAKENS,
            "Many cows are far off in one direction: is the whole test day off, or did all of the herd change?"),
    COWS_SWAPPED(
            "cows-swapped",
            Severity.WEAKENS,
            "Two cows are each far off and each near what the other was to give: were they swapped?"),
    TANK_GAP(
            "tank-gap",
            Severity.WEAKENS,
            "The cows' weights and what the tank and other uses took up lie apart; explain it before the test is relied on."),

    // Accumulated yield
    COUNTED_TO_LAST_TEST(
            "counted-to-last-test",
            Severity.NOTES,
            "The yield is counted up to the last test; the days after it are not in it."),

    // Corrected milk and milk energy
    MILK_NEEDED("milk-needed", Severity.BLOCKS, "This figure needs a milk weight and there is none."),
    FAT_NEEDED("fat-needed", Severity.BLOCKS, "This figure needs fat and it was not measured; no mean stands in."),
    PROTEIN_NEEDED(
            "protein-needed", Severity.BLOCKS, "This figure needs protein and it was not measured; no mean stands in."),
    LACTOSE_NEEDED(
            "lactose-needed", Severity.BLOCKS, "This figure needs lactose and it was not measured; no mean stands in."),
    SOLIDS_NOT_FAT_NEEDED(
            "solids-not-fat-needed", Severity.BLOCKS, "This figure needs solids-not-fat, which were not measured."),
    VALUE_IMPOSSIBLE(
            "value-impossible", Severity.BLOCKS, "A weight is below zero, or the parts weigh more than the milk."),
    FORMULA_NOT_NORMALISED(
            "formula-not-normalised",
            Severity.NOTES,
            "At its stated standard composition this formula does not give back the milk put in."),
    FORMULA_OUT_OF_RANGE(
            "formula-out-of-range", Severity.WEAKENS, "The composition lies where this formula is known to be off."),

    // Udder health
    SCC_NEEDED("scc-needed", Severity.BLOCKS, "No somatic cell count was measured."),
    SCC_ZERO("scc-zero", Severity.BLOCKS, "A cell count of zero has no score: its logarithm does not exist."),
    SCC_BELOW_DETECTION(
            "scc-below-detection",
            Severity.WEAKENS,
            "A cell count below one thousand per mL is below what counters detect; check it."),

    NO_RECENT_TEST("no-recent-test", Severity.WEAKENS, "The last test lies long back; the figures are of that day."),
    LOW_COUNT_IS_NO_PROOF(
            "low-count-is-no-proof", Severity.NOTES, "A low count does not rule out an infection; many are missed."),

    // Persistency, peak and lifetime
    LACTATION_TOO_SHORT(
            "lactation-too-short", Severity.BLOCKS, "The lactation does not reach the days this figure compares."),
    PERSISTENCY_REFUSED("persistency-refused", Severity.BLOCKS, "The tests do not support a persistency."),
    PEAK_MAY_COME("peak-may-come", Severity.NOTES, "She may still give more: the days of the peak are not over."),
    OPEN_SO_FAR("open-so-far", Severity.WEAKENS, "She is not known to be pregnant; days open so far, to be longer."),
    INTERVAL_EXPECTED("interval-expected", Severity.WEAKENS, "The calving interval is expected, not yet observed."),
    YEAR_INCOMPLETE("year-incomplete", Severity.BLOCKS, "The records do not reach back over the 365 days needed."),
    INCOMPLETE_SUM("incomplete-sum", Severity.WEAKENS, "A part of the sum has no value and is left out."),
    DATES_OUT_OF_ORDER("dates-out-of-order", Severity.BLOCKS, "Two dates on record cannot both be right."),
    NO_FACTOR("no-factor", Severity.BLOCKS, "No factor for this class was learned or given; none is made up."),

    // Curves
    TOO_FEW_TESTS("too-few-tests", Severity.BLOCKS, "Fewer tests than this method needs."),
    NOT_ESTIMABLE("not-estimable", Severity.BLOCKS, "The tests do not determine this curve."),
    NO_INNER_PEAK("no-inner-peak", Severity.WEAKENS, "The curve has no peak inside the lactation; none is given."),
    ATYPICAL_CURVE(
            "atypical-curve",
            Severity.WEAKENS,
            "The curve does not rise and then fall as lactations usually do; no peak is given."),
    TESTS_TOO_CLOSE(
            "tests-too-close",
            Severity.WEAKENS,
            "The tests cover too little of the lactation for a peak or a persistency."),
    PEAK_BEFORE_FIRST_TEST(
            "peak-before-first-test", Severity.WEAKENS, "The first test came after the usual peak; none is given."),
    PEAK_OUT_OF_REACH(
            "peak-out-of-reach",
            Severity.WEAKENS,
            "The curve peaks on a day on which the tests cannot show a peak; none is given."),
    PEAK_UNCERTAIN("peak-uncertain", Severity.WEAKENS, "The peak is given but poorly known from these tests."),
    TEST_FAR_OFF_CURVE(
            "test-far-off-curve",
            Severity.WEAKENS,
            "A test lies far off the curve; see also the fit made without it, and check the weight."),

    // Projection
    NO_TEST_YET("no-test-yet", Severity.WEAKENS, "No test yet: the figure is the expectation of her group."),
    FEW_TEST_DAYS("few-test-days", Severity.NOTES, "Few test days; the interval is wide."),
    REFERENCE_OF_OTHER_BREED(
            "reference-of-other-breed",
            Severity.WEAKENS,
            "No standard for her breed; one pooled over breeds stood in."),
    OWN_EARLIER_LACTATIONS(
            "own-earlier-lactations",
            Severity.NOTES,
            "Her own earlier lactations are part of what is expected of her."),
    HERD_TEST_DAY_EFFECT(
            "herd-test-day-effect",
            Severity.NOTES,
            "What a test day had in common for the whole herd was taken out of her weight."),
    IF_MILKED_TO_305("if-milked-to-305", Severity.NOTES, "The 305-day figure holds if she is milked to day 305."),
    LACTATION_ENDED(
            "lactation-ended", Severity.NOTES, "The lactation has ended; her actual yield is the final figure."),
    STANDARD_LEARNED(
            "standard-learned",
            Severity.NOTES,
            "The standard of her group has learned from other cows of the herd, recent lactations weighing more; none of her"
                    + " own tests took part."),
    CALVING_SEASON(
            "calving-season",
            Severity.NOTES,
            "Calvings of that time of the year lie above or below the herd's mean; that is in what is expected of her."),
    INTERVAL_FROM_PAST_ERRORS(
            "interval-from-past-errors",
            Severity.NOTES,
            "The interval reaches as far as errors of past projections did, which is not what the model alone says."),
    TESTS_AFTER_AS_OF("tests-after-as-of", Severity.NOTES, "Test days after the as-of day took no part."),
    CALVING_AFTER_AS_OF(
            "calving-after-as-of",
            Severity.WEAKENS,
            "She had not calved on the as-of day; nothing of her is known yet."),

    // Keep or replace
    PRICES_NOT_SET("prices-not-set", Severity.WEAKENS, "Prices are not set: the list is by milk only."),
    PRICES_NEEDED(
            "prices-needed",
            Severity.BLOCKS,
            "This needs a price of milk, of a heifer and of a cow sold; they are not all set, or contradict."),
    REFERENCE_VALUE_USED(
            "reference-value-used",
            Severity.WEAKENS,
            "A value of an invented reference set stood in; it is not your herd's."),
    CURVE_NOT_OF_HERD(
            "curve-not-of-herd", Severity.WEAKENS, "The lactation curve is a general one, not that of your herd."),
    PREGNANCY_NOT_CHECKED(
            "pregnancy-not-checked",
            Severity.WEAKENS,
            "Her pregnancy is not checked and counts by chance; check her before deciding."),
    PRICES_CONTRADICT(
            "prices-contradict",
            Severity.WEAKENS,
            "A heifer costs no more than a first-lactation cow sells for; the list is by milk only."),
    CONCEPTION_ASSUMED(
            "conception-assumed",
            Severity.WEAKENS,
            "She is pregnant as far as can be told, and nothing tells since when; a usual time stood in."),
    MILK_LEVEL_ASSUMED(
            "milk-level-assumed", Severity.WEAKENS, "Her milk level is not known; the mean of her group stood in."),
    MILK_LEVEL_OF_ONE_TEST("milk-level-of-one-test", Severity.WEAKENS, "Her milk level rests on one test day."),
    HEALTH_NOT_VALUED(
            "health-not-valued", Severity.NOTES, "Her health is not valued: nothing was entered that it costs."),
    OUTSIDE_VALUE_TABLE(
            "outside-value-table",
            Severity.WEAKENS,
            "She is past the months the value table covers; a simpler rule or the nearest month stood in."),
    OUTSIDE_TABLE_NO_VALUE(
            "outside-table-no-value", Severity.BLOCKS, "The value table cannot keep a cow at this stage."),
    PRICE_CHANGE_LEFT_OUT(
            "price-change-left-out", Severity.NOTES, "A change of prices under which no value exists was left out.");

    private final String code;
    private final Severity severity;
    private final String meaning;

    FindingCode(String code, Severity severity, String meaning) {
        this.code = code;
        this.severity = severity;
        this.meaning = meaning;
    }

    /** The stable code on the wire, kebab-case. */
    public String code() {
        return code;
    }

    public Severity severity() {
        return severity;
    }

    /** One plain sentence, English, without figures. */
    public String meaning() {
        return meaning;
    }
}
