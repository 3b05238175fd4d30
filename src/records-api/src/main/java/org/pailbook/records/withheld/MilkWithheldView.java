package org.pailbook.records.withheld;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.AnimalIdentifier;

/** Cows whose milk must stay out of the tank. */
@Schema(name = "MilkWithheld", description = "Whose milk must stay out of the tank, why, since, until, who said so")
@JsonInclude(JsonInclude.Include.NON_NULL)
record MilkWithheldView(
        String herd,
        @Schema(description = "In the herd's zone") String at,
        String knownAt,
        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        UsedSettingsView usedSettings,
        int colostrumDays,
        List<CowView> cows,

        @Schema(description = "Cows in milk without a foremilk check on that day: not recorded is not normal")
        List<AnimalIdentifier> foremilkNotRecorded,

        String caution) {

    /** One cow. */
    @Schema(name = "WithheldCow")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CowView(
            AnimalIdentifier animal,
            String name,

            @Schema(enumeration = {"inMilk", "dry", "notCalved"})
            String state,

            @Schema(description = "The latest day entered, withheld through it; absent while no end is known")
            String until,

            boolean isEndKnown,
            List<ReasonView> reasons) {}

    /** One reason. */
    @Schema(name = "WithheldReason")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ReasonView(
            @Schema(enumeration = {"treatment", "treatmentEndNotEntered", "foremilk", "colostrum"})
            String kind,

            String since,

            @Schema(description = "As entered, never computed from the product")
            String until,

            @Schema(description = "Prescriber, or who looked; absent if not recorded")
            String saidBy,

            String why) {}
}
