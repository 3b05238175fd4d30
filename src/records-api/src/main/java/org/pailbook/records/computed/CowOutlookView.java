package org.pailbook.records.computed;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.Alternative;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.PayoffRange;
import org.pailbook.lactation.culling.Suggestion;
import org.pailbook.records.wire.FigureView;

/**
 * What keeping a cow is worth, how sure that is and why.
 *
 * @param suggestion what the figures point to; never an order
 */
@Schema(
        name = "CowOutlook",
        description =
                "What keeping a cow is worth over replacing her now, in your currency units; an estimate to think with,"
                        + " to be shown together with its caution")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CowOutlookView(
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(description = "Keeping her to her best time of replacement over replacing her now, cu")
        FigureView retentionPayoff,

        @Schema(description = "How far that moves if one thing is other than taken; no probability")
        RangeView range,

        SuggestionView suggestion,

        @Schema(description = "The two largest, in cu; above 0 speaks for keeping her")
        List<ReasonView> reasons,

        @Schema(description = "For an open cow: keeping her without breeding her again")
        AlternativeView alternative,

        @Schema(
                description =
                        "Of a pregnant cow over the same cow open; of one served and not checked, the same if she took; of an"
                                + " open cow, what a conception in this month would be worth")
        FigureView pregnancyValue,

        @Schema(description = "Rules that look less far") List<FigureView> simplerRules) {

    /** Lowest and highest pay-off and each change that was tried, cu. */
    @Schema(name = "PayoffRange")
    public record RangeView(double low, double high, List<ShiftView> shifts) {}

    /** One thing changed. */
    @Schema(name = "PayoffShift")
    public record ShiftView(
            @Schema(examples = "milk price 20 % lower") String change, double payoff) {}

    /** What the figures point to. */
    @Schema(name = "CullingSuggestion")
    public record SuggestionView(
            @Schema(enumeration = {"worth-keeping", "close-call", "consider-replacing"})
            String code,

            String words) {
        static SuggestionView of(Suggestion suggestion) {
            return new SuggestionView(suggestion.code(), suggestion.words());
        }
    }

    /** One thing about her and what it does to her pay-off, cu. */
    @Schema(name = "CullingReason")
    public record ReasonView(
            @Schema(enumeration = {"milk-level", "pregnancy", "parity", "health"})
            String about,

            String words,
            double difference) {}

    /** Kept, not bred, replaced later. */
    @Schema(name = "KeepWithoutBreeding")
    public record AlternativeView(
            FigureView payoff,
            int untilMonthInMilk,
            String until,

            @Schema(description = "Worth more than keeping and breeding her")
            boolean isBetter) {
        static AlternativeView of(Alternative other, boolean explain) {
            return new AlternativeView(
                    FigureView.of(other.payoff(), explain),
                    other.untilMonthInMilk(),
                    other.until().toString(),
                    other.isBetter());
        }
    }

    public static CowOutlookView of(CowOutlook outlook, boolean explain) {
        boolean isKnown = outlook.range().isPresent();
        return new CowOutlookView(
                isKnown ? "ok" : "notEnoughData",
                FigureView.of(outlook.retentionPayoff(), explain),
                outlook.range().map(CowOutlookView::range).orElse(null),
                outlook.suggestion().map(SuggestionView::of).orElse(null),
                outlook.reasons().stream()
                        .map(reason -> new ReasonView(reason.about().code(), reason.words(), reason.differenceCu()))
                        .toList(),
                outlook.alternative()
                        .map(other -> AlternativeView.of(other, explain))
                        .orElse(null),
                outlook.pregnancyValue()
                        .map(figure -> FigureView.of(figure, explain))
                        .orElse(null),
                outlook.simplerRules().stream()
                        .map(figure -> FigureView.of(figure, explain))
                        .toList());
    }

    private static RangeView range(PayoffRange range) {
        return new RangeView(
                range.lowCu(),
                range.highCu(),
                range.shifts().stream()
                        .map(shift -> new ShiftView(shift.change().words(), shift.payoffCu()))
                        .toList());
    }
}
