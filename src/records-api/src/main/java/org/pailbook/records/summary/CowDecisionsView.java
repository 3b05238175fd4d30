package org.pailbook.records.summary;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;

/** What is to be decided of one cow: her breeding, and whether her milk must stay out. What keeping her is worth has an address of its own. */
@Schema(
        name = "CowDecisions",
        description =
                "Her breeding and the lists she is on, and what is recorded against her milk; to be shown with the cautions")
record CowDecisionsView(
        BreedingView breeding,

        @Schema(
                description =
                        "Why her milk stays out at the end of the day; empty: nothing is recorded against it, which does not say it is safe")
        List<WithheldView> milkWithheld,

        @Schema(description = "Address of what keeping her is worth")
        String outlook,

        UsedSettingsView usedSettings,
        List<String> cautions) {

    /** Where she stands. */
    @Schema(name = "CowBreeding")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record BreedingView(
            @Schema(enumeration = {"left", "pregnant", "served", "open"})
            String state,

            String lastService,
            String expectedCalving,
            String dryOff,

            @Schema(description = "Since when the farm will not have her served; absent if it will")
            String notToBeBredSince,

            @Schema(description = "Why, as entered") String notToBeBredReason,

            @Schema(description = "Lists of the breeding day she is on")
            List<OnListView> lists) {}

    /** A list she is on. */
    @Schema(name = "CowOnList")
    record OnListView(String list, String date, String why) {}

    /** One reason her milk stays out. */
    @Schema(name = "CowMilkWithheld")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record WithheldView(
            @Schema(enumeration = {"treatment", "treatmentEndNotEntered", "foremilk", "colostrum"})
            String kind,

            String since,

            @Schema(description = "As entered; absent while no end is known")
            String until,

            String why) {}
}
