package org.pailbook.records.udder;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.MeasuredView;

/** Udder health of a herd. */
@Schema(name = "UdderHealth", description = "Cell count states and rates, shares of the tank, the tank's limit")
@JsonInclude(JsonInclude.Include.NON_NULL)
record UdderHealthView(
        String herd,
        String asOf,
        String knownAt,
        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        UsedSettingsView usedSettings,

        @Schema(description = "Count from which a test is high, thousand per mL")
        double highFromThousandPerMl,

        @Schema(description = "Last day on which cells were counted")
        String lastTestDate,

        @Schema(description = "Of the last test: prevalence, new, cured, chronic")
        List<MeasuredView> lastTest,

        @Schema(description = "Of the 365 days: new, cured, chronic, fresh heifers")
        List<MeasuredView> year,

        @Schema(description = "Over the dry periods that ended in the 365 days")
        List<MeasuredView> dryPeriods,

        @Schema(description = "Cows in the herd with a count at the last test, the highest first")
        List<CowView> cows,

        TankView tank,
        List<LimitView> limits,
        List<TriggerView> seeVeterinarian,
        List<WarningView> warnings,
        List<String> cautions) {

    /** One cow's last count. */
    @Schema(name = "CowCellCount")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CowView(
            AnimalIdentifier animal,
            String name,
            int parity,
            String testDate,
            double sccThousandPerMl,
            double score,
            boolean isHigh,

            @Schema(
                    description =
                            "Against the test before; absent if that is missing, nearer than 15 or further than 70 days",
                    enumeration = {"clean", "new", "cured", "chronic"})
            String state) {}

    /** The tank by the cows' last tests. */
    @Schema(name = "TankByCows")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record TankView(
            FigureView estimate,

            @Schema(description = "Each cow's part of all the cells, the largest first")
            List<ShareView> shares,

            @Schema(description = "Not in the tank on that day: withheld")
            List<AnimalIdentifier> withheld,

            @Schema(description = "In the tank and not in the estimate: no weight or no count")
            List<AnimalIdentifier> withoutCount,

            @Schema(description = "The last count of the tank on record, of a pickup")
            MeasuredTankView measured,

            StandingView standing) {}

    /** One cow's part. */
    @Schema(name = "TankShare")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ShareView(
            AnimalIdentifier animal,
            double milkKg,
            double sccThousandPerMl,
            double sharePct,
            @Schema(description = "Thousand per mL") Double tankWithoutHer) {}

    /** A count of the tank. */
    @Schema(name = "MeasuredTankCount")
    record MeasuredTankView(String date, double sccThousandPerMl) {}

    /** Where the tank stands against the limit chosen. */
    @Schema(name = "TankStanding")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record StandingView(
            String limit,

            @Schema(enumeration = {"tooFewSamples", "below", "near", "above"})
            String standing,

            Double valueThousandPerMl,
            int samples,
            String words) {}

    /** A limit to choose. */
    @Schema(name = "TankLimit")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record LimitView(String limit, String place, double limitThousandPerMl, String validFrom, String source) {}

    /** A reason to see the veterinarian. */
    @Schema(name = "VeterinaryTrigger")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record TriggerView(
            @Schema(
                    enumeration = {
                        "today",
                        "freshCow",
                        "thirdCase",
                        "notBetter",
                        "newInfections",
                        "tankAboveLimit",
                        "freshHeifers"
                    })
            String trigger,

            String words,

            @Schema(description = "Absent if it is the herd")
            AnimalIdentifier animal) {}
}
