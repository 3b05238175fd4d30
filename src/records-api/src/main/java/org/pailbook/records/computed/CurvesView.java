package org.pailbook.records.computed;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveComparison;
import org.pailbook.lactation.curve.CurveEstimate;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * Curves of one lactation side by side.
 *
 * @param status ok if at least one curve is shown
 * @param judged whether the rules for a cow's tests were applied; not to bare days and weights
 */
@Schema(
        name = "LactationCurves",
        description = "Curves fitted to the same tests, smallest corrected criterion first, refused ones last")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CurvesView(
        String herd,
        AnimalIdentifier animal,
        Integer parity,
        String calvedOn,

        @Schema(description = "Events after this day took no part; absent for bare days and weights")
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,

        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(
                description =
                        "false for bare days and weights: no test is left out and no peak or curve is refused for what cows do")
        boolean judged,

        List<CurveView> curves,

        @Schema(description = "About the lactation itself; each curve has its own")
        List<WarningView> warnings) {

    /** Fits each model to the tests of a lactation. */
    public static CurvesView of(Subject subject, List<CurveModel> models, boolean explain) {
        List<CurveView> curves = subject.lactation()
                .map(lactation -> fitted(subject, lactation, models, explain))
                .orElse(List.of());
        return new CurvesView(
                subject.herd().orElse(null),
                subject.animal().orElse(null),
                subject.parity().orElse(null),
                subject.calvedOn(),
                subject.day(),
                subject.asOf().knownAtText(),
                subject.computedAt(),
                status(curves),
                true,
                curves,
                subject.findings().stream().map(WarningView::of).toList());
    }

    private static List<CurveView> fitted(
            Subject subject, Lactation lactation, List<CurveModel> models, boolean explain) {
        CurveComparison comparison =
                CurveComparison.of(models, lactation, subject.asOf().day());
        UsableTests tests = UsableTests.of(lactation, subject.asOf().day());
        CurveView.Points points = explain ? new CurveView.Points(tests.daysInMilk(), tests.milkKg()) : null;
        List<CurveView> curves = new ArrayList<>();
        for (CurveFit fit : comparison.fits()) {
            curves.add(CurveView.of(fit, comparison.aiccAboveBest(fit), points));
        }
        for (CurveFit fit : comparison.refused()) {
            curves.add(CurveView.of(fit, OptionalDouble.empty(), points));
        }
        return curves;
    }

    /** Fits each model to bare points, in the same order as those of a lactation. */
    public static CurvesView ofPoints(
            double[] daysInMilk, double[] milkKg, List<CurveModel> models, boolean explain, String computedAt) {
        record Fitted(CurveModel model, CurveEstimate estimate) {
            double aicc() {
                return estimate.aicc().orElse(Double.POSITIVE_INFINITY);
            }
        }
        CurveView.Points points = new CurveView.Points(daysInMilk, milkKg);
        List<Fitted> all = models.stream()
                .map(model -> new Fitted(model, model.estimate(daysInMilk, milkKg)))
                .sorted(Comparator.comparing(
                                (Fitted one) -> one.estimate.refusal().isPresent())
                        .thenComparing(Fitted::aicc))
                .toList();
        double best = all.get(0).aicc();
        List<CurveView> curves = all.stream()
                .map(one -> CurveView.of(
                        one.model,
                        one.estimate,
                        Double.isFinite(one.aicc()) ? OptionalDouble.of(one.aicc() - best) : OptionalDouble.empty(),
                        points,
                        explain))
                .toList();
        return new CurvesView(null, null, null, null, null, null, computedAt, status(curves), false, curves, List.of());
    }

    private static String status(List<CurveView> curves) {
        return curves.stream().anyMatch(curve -> curve.status().equals("ok")) ? "ok" : "notEnoughData";
    }
}
