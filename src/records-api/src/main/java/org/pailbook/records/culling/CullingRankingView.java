package org.pailbook.records.culling;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.CowOutlookView.ReasonView;
import org.pailbook.records.computed.OwnExitsView;
import org.pailbook.records.computed.OwnPregnanciesView;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * A herd in the order of what keeping each cow is worth.
 *
 * @param caution to be shown with the list
 * @param basis money, or milk where prices are not set
 */
@Schema(
        name = "CullingRanking",
        description =
                "Cows in milk and dry, lowest first, by what keeping each is worth over replacing her; by milk alone where"
                        + " milk, heifer or cull price is not recorded. To think with, never an order; to be shown with its caution")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CullingRankingView(
        String herd,
        String asOf,
        String knownAt,
        String computedAt,

        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(description = "To be shown with the list") String caution,

        @Schema(enumeration = {"money", "milk"}) String basis,

        @Schema(description = "ISO 4217, of every sum of money here")
        String currency,

        FigureView.MethodView method,
        UsedSettingsView usedSettings,

        @Schema(description = "What a new pregnancy is worth, mean over conceptions in the herd of the model")
        FigureView meanNewPregnancy,

        @Schema(description = "What a lost one costs, mean over losses")
        FigureView meanPregnancyLoss,

        @Schema(description = "What is not recorded; values of an invented reference set stood in")
        List<AssumedView> assumed,

        @Schema(description = "The herd's own 21-day pregnancies of the year, moved into the reference")
        List<OwnPregnanciesView> ownPregnancies,

        @Schema(
                description =
                        "The herd's own unplanned exits of the year, moved into the reference; empty if no departure of it is recorded")
        List<OwnExitsView> ownExits,

        @Schema(description = "About the list as a whole") List<WarningView> warnings,

        List<CowLineView> cows,

        @Schema(description = "Cows without a value, and why")
        List<NotRankedView> notRanked) {

    /** One cow in her place; money in the currency of the list. */
    @Schema(name = "RankedCow")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CowLineView(
            @Schema(description = "1 is the lowest") int rank,

            @Schema(description = "The least it comes to if prices or her level change")
            Integer lowestRank,

            Integer highestRank,
            AnimalIdentifier animal,
            String name,
            int parity,

            @Schema(description = "Dry days count on") int daysSinceCalving,

            @Schema(enumeration = {"open", "pregnant", "inseminated", "not-known"})
            String pregnancy,

            @Schema(description = "The farm marked her not to be bred; absent otherwise")
            Boolean notToBeBred,

            @Schema(description = "Projected 305-day milk over the mean of her group, percent")
            Double milkLevelPct,

            @Schema(description = "Keeping her over replacing her now")
            Double retentionPayoff,

            @Schema(description = "Lowest if milk or heifer price is 20 % off or her level by its standard error")
            Double low,

            Double high,

            @Schema(enumeration = {"worth-keeping", "close-call", "consider-replacing"})
            String suggestion,

            List<ReasonView> reasons,

            @Schema(description = "For an open cow: keeping her without breeding her again")
            WithoutBreedingView withoutBreeding,

            @Schema(
                    description =
                            "Of her pregnancy; if she took, where she is not checked; of an open cow, of a conception in this month")
            Double pregnancyValue,

            @Schema(description = "Codes of what was found") List<String> warnings) {}

    /** Kept, not bred, replaced later. */
    @Schema(name = "RankedCowWithoutBreeding")
    record WithoutBreedingView(double payoff, int untilMonthInMilk, String until, boolean isBetter) {}

    /** A cow without a value. */
    @Schema(name = "NotRankedCow")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record NotRankedView(AnimalIdentifier animal, String name, List<String> warnings) {}
}
