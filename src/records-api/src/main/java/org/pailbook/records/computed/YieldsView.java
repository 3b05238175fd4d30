package org.pailbook.records.computed;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * The yield of one lactation so far, by one method or by several side by side.
 *
 * @param status ok if at least one method gives the milk
 */
@Schema(name = "LactationYields", description = "What she gave so far, by each method asked for")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record YieldsView(
        String herd,
        AnimalIdentifier animal,
        Integer parity,
        String calvedOn,

        @Schema(description = "Events after this day took no part")
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,

        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        List<YieldView> yields,

        @Schema(description = "About the lactation itself; each figure has its own")
        List<WarningView> warnings) {

    /**
     * One method's yield.
     *
     * @param toDaysInMilk last day counted; absent without a value
     */
    @Schema(name = "LactationYield")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record YieldView(
            @Schema(enumeration = {"ok", "notEnoughData"}) String status,
            MethodView method,
            @Schema(description = "First day counted") Integer fromDaysInMilk,
            @Schema(description = "Last day counted") Integer toDaysInMilk,

            @Schema(description = "Tests the milk was made from")
            int milkTests,

            @Schema(description = "Tests among them with fat")
            int fatTests,

            @Schema(description = "Tests among them with protein")
            int proteinTests,

            FigureView milk,
            FigureView fat,
            FigureView protein,
            FigureView fatPct,
            FigureView proteinPct) {

        static YieldView of(YieldAccumulation method, AccumulatedYield yield, boolean explain) {
            boolean isOk = yield.milk().value().isPresent();
            return new YieldView(
                    isOk ? "ok" : "notEnoughData",
                    MethodView.of(method),
                    isOk ? (Integer) yield.fromDaysInMilk() : null,
                    isOk ? (Integer) yield.toDaysInMilk() : null,
                    yield.milkTests(),
                    yield.fatTests(),
                    yield.proteinTests(),
                    FigureView.of(yield.milk(), explain),
                    FigureView.of(yield.fat(), explain),
                    FigureView.of(yield.protein(), explain),
                    FigureView.of(yield.fatPct(), explain),
                    FigureView.of(yield.proteinPct(), explain));
        }
    }

    /** @param methodId one of {@link MethodChoice#yieldMethods()}, or null for all of them */
    public static YieldsView of(Subject subject, String methodId, boolean explain) {
        List<YieldView> yields = subject.lactation()
                .map(lactation -> MethodChoice.yieldMethods(subject.breed(), lactation.parity()).stream()
                        .filter(method -> methodId == null || method.id().equals(methodId))
                        .map(method -> YieldView.of(
                                method,
                                method.accumulate(lactation, subject.asOf().day()),
                                explain))
                        .toList())
                .orElse(List.of());
        return new YieldsView(
                subject.herd().orElse(null),
                subject.animal().orElse(null),
                subject.parity().orElse(null),
                subject.calvedOn(),
                subject.day(),
                subject.asOf().knownAtText(),
                subject.computedAt(),
                yields.stream().anyMatch(yield -> yield.status().equals("ok")) ? "ok" : "notEnoughData",
                yields,
                subject.findings().stream().map(WarningView::of).toList());
    }
}
