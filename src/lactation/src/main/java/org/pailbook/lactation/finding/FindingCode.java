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

    // Abnormal test days
    TEST_BELOW_EXPECTED(
            "test-below-expected", Severity.WEAKENS, "A test is far below what the test before it leads to expect."),
    TEST_ABOVE_EXPECTED(
            "test-above-expected", Severity.WEAKENS, "A test is far above what the test before it leads to expect."),
    TEST_NOT_CREDIBLE("test-not-credible", Severity.WEAKENS, "A test is so far off that it is better left out."),

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
            "She had not calved on the as-of day; nothing of her is known yet.");

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
