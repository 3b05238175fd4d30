package org.pailbook.lactation.breeding;

import org.pailbook.lactation.method.HowKnown;

/** The lists of the breeding day: the rule of each, and where it comes from. */
public enum BreedingList {
    TO_BREED(
            "toBreed",
            "In the herd, may be bred, not found pregnant, past the waiting period, not served in the last 18 days.",
            HowKnown.COMMON_PRACTICE,
            "waiting period 50 to 60 days: common practice, no source"),
    NOT_YET_SERVED_LATE(
            "notYetServedLate",
            "To be bred, never served since calving, and more than 30 days past the waiting period.",
            HowKnown.READ,
            "window of 30 days for the first service: Acta Vet. Scand. 54:5 (2012), abstract"),
    WATCH_FOR_RETURN(
            "watchForReturn",
            "Served 18 to 24 days ago, outcome not known: she shows heat now if she did not take.",
            HowKnown.READ,
            "cycle of 21 days: Nebel (2003), extension"),
    TO_CHECK(
            "toCheck",
            "Served long enough ago for a check, not served again, not checked.",
            HowKnown.READ,
            "field medians 34 days by hand, 27 by ultrasound: Rosenbaum and Warnick (2004), as cited in a review"),
    RECHECK(
            "recheck",
            "Found pregnant once, 60 to 90 days after the service, not checked again; or served after she was found pregnant.",
            HowKnown.READ,
            "losses after the first check: meta-analysis, JDS Commun. 4:144-148 (2023), abstract"),
    REPEAT_BREEDER(
            "repeatBreeder",
            "Three or more services since calving did not take: ask your veterinarian.",
            HowKnown.COMMON_PRACTICE,
            "common practice, no source"),
    DUE_TO_DRY_OFF(
            "dueToDryOff",
            "Pregnant, in milk, and her day to dry off lies in the next 14 days or is past.",
            HowKnown.READ,
            "60 days dry, a long-standing standard: J. Dairy Sci. 86:3027 (2003), abstract"),
    DUE_TO_CALVE(
            "dueToCalve",
            "Pregnant and expected to calve within 21 days, or past that day.",
            HowKnown.COMMON_PRACTICE,
            "common practice, no source"),
    NOT_TO_BREED(
            "notToBreed",
            "Marked not to be bred, by the farm's choice, until it says otherwise; on no list to serve her.",
            HowKnown.OURS,
            "as entered");

    private final String wireName;
    private final String rule;
    private final HowKnown howKnown;
    private final String source;

    BreedingList(String wireName, String rule, HowKnown howKnown, String source) {
        this.wireName = wireName;
        this.rule = rule;
        this.howKnown = howKnown;
        this.source = source;
    }

    public String wireName() {
        return wireName;
    }

    /** The rule of the list, one sentence. */
    public String rule() {
        return rule;
    }

    /** How the source of the rule's days is known. */
    public HowKnown howKnown() {
        return howKnown;
    }

    /** Where its days come from. */
    public String source() {
        return source;
    }
}
