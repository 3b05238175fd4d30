package org.pailbook.records.reproduction;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView.WarningView;

/** The lists of the breeding day; every list is there, also an empty one. */
@Schema(name = "BreedingWorklist", description = "Who is to be served, watched, checked, dried off, and why")
@JsonInclude(JsonInclude.Include.NON_NULL)
record WorklistView(
        String herd,
        String asOf,
        String knownAt,
        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        SettingsView settings,
        UsedSettingsView usedSettings,

        @Schema(description = "What the values of pregnancies in the lines rest on, and the means over the herd")
        PregnancyWorthView pregnancyWorth,

        List<ListView> lists,
        List<WarningView> warnings,
        List<String> cautions) {

    /** One list with its rule. */
    @Schema(name = "BreedingList")
    record ListView(
            @Schema(
                    enumeration = {
                        "toBreed",
                        "notYetServedLate",
                        "watchForReturn",
                        "toCheck",
                        "recheck",
                        "repeatBreeder",
                        "dueToDryOff",
                        "dueToCalve",
                        "notToBreed"
                    })
            String list,

            String rule,

            @Schema(description = "Where the days of the rule come from")
            String source,

            @Schema(description = "read, transcribed, from-memory, ours or common-practice")
            String sourceKnown,

            List<CowView> cows) {}

    /** One cow and why she is here. */
    @Schema(name = "ListedCow")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CowView(
            AnimalIdentifier animal,
            String name,
            @Schema(description = "0 for a heifer") int parity,
            Integer daysSinceCalving,

            @Schema(enumeration = {"open", "served", "pregnant"})
            String state,

            String lastServedOn,

            @Schema(description = "Since when she is due for it, or the day it is due")
            String day,

            @Schema(description = "What on her record put her here")
            String why,

            ExpectedView expectedCalving,

            @Schema(
                    description =
                            "What her pregnancy is worth over being open, in the currency of pregnancyWorth; of a cow served and"
                                    + " not checked, if she took; of an open one, what a conception in this month would be worth."
                                    + " Absent without prices, for heifers, cows not to be bred and cows past the months of breeding")
            Double pregnancyValue) {}

    /** When she is expected to calve. */
    @Schema(name = "ExpectedCalving")
    record ExpectedView(
            String conceivedOn,
            String due,

            @Schema(description = "95 of 100 calve from this day")
            String earliest,

            String latest,
            @Schema(description = "Day to dry her off") String dryOff,
            List<WarningView> warnings) {}
}
