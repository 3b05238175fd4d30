package org.pailbook.records.computed;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveEstimate;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.curve.CurveParameter;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.records.wire.FigureView.InputsView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.OrNull;

/**
 * A curve fitted to the tests of one lactation, or why none is shown.
 *
 * @param status ok, or notEnoughData when the fit is refused
 */
@Schema(
        name = "LactationCurve",
        description = "A curve fitted to one lactation's tests; it sums them up and projects nothing")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CurveView(
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        MethodView method,
        List<ParameterView> parameters,
        @Schema(description = "Day of the highest milk") Double peakDaysInMilk,
        @Schema(description = "Its standard error, days") Double peakDaysStandardError,
        @Schema(description = "Milk on that day, kg") Double peakMilkKgPerDay,
        @Schema(description = "Its standard error, kg") Double peakMilkStandardErrorKgPerDay,

        @Schema(description = "Spread of the tests about the curve, kg per day")
        Double residualSdKg,

        @Schema(description = "Residual sum of squares, kg squared")
        Double rssKg2,

        @Schema(description = "Akaike's criterion, corrected for few tests; smaller describes these tests better")
        Double aicc,

        @Schema(description = "How far above the smallest of the curves compared")
        Double aiccAboveBest,

        @Schema(description = "Schwarz's criterion") Double bic,

        @Schema(description = "How near the tests come to not telling the parameters apart")
        Double conditionNumber,

        @Schema(description = "Milk the curve gives from day 1 to the last test, kg")
        Double totalKg,

        @Schema(description = "The last day of that total") Integer totalToDaysInMilk,
        int testDays,
        InputsView inputs,
        List<WarningView> warnings,

        @Schema(description = "The fit without tests that lie far off; show both")
        CurveView withoutFarTests,

        @Schema(description = "Each test beside the curve; only with explain=true")
        List<PointView> points) {

    /** One parameter, named as in the paper. */
    @Schema(name = "CurveParameter")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record ParameterView(String name, double value, String unit, Double standardError) {
        static ParameterView of(CurveParameter parameter) {
            return new ParameterView(
                    parameter.name(), parameter.value(), parameter.unit(), OrNull.ofFinite(parameter.standardError()));
        }
    }

    /**
     * One test beside the curve.
     *
     * @param residualKg measured less fitted
     * @param studentizedResidual that over the spread it would have if the curve were fitted without it
     */
    @Schema(name = "CurvePoint")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record PointView(
            double daysInMilk, double milkKg, double fittedKg, double residualKg, Double studentizedResidual) {}

    /** The curve of a lactation, judged by the rules of the library. */
    public static CurveView of(CurveFit fit) {
        return of(fit, OptionalDouble.empty(), null);
    }

    /**
     * The same beside other curves.
     *
     * @param aiccAboveBest empty if it has no criterion
     * @param points the tests fitted, or null if they are not to be shown
     */
    static CurveView of(CurveFit fit, OptionalDouble aiccAboveBest, Points points) {
        boolean isOk = !fit.isRefused();
        int lastDay = (int) fit.lastTestDaysInMilk().orElse(0);
        OptionalDouble total = isOk ? fit.totalKg(1, lastDay) : OptionalDouble.empty();
        Optional<CurveEstimate> estimate = fit.estimate();
        return new CurveView(
                status(isOk),
                MethodView.of(fit.model()),
                isOk ? fit.parameters().stream().map(ParameterView::of).toList() : null,
                OrNull.ofFinite(fit.peakDaysInMilk()),
                OrNull.ofFinite(fit.peakDaysStandardError()),
                OrNull.ofFinite(fit.peakMilkKgPerDay()),
                OrNull.ofFinite(fit.peakMilkStandardErrorKgPerDay()),
                OrNull.ofFinite(fit.residualSdKg()),
                OrNull.ofFinite(fit.rssKg2()),
                OrNull.ofFinite(fit.aicc()),
                OrNull.ofFinite(aiccAboveBest),
                OrNull.ofFinite(fit.bic()),
                estimate.map(fitted -> OrNull.ofFinite(fitted.conditionNumber()))
                        .orElse(null),
                OrNull.ofFinite(total),
                total.isPresent() ? (Integer) lastDay : null,
                fit.testCount(),
                InputsView.of(fit.inputs()),
                WarningView.ofInputs(fit.findings()),
                fit.withoutFarTests().map(CurveView::of).orElse(null),
                points == null || estimate.isEmpty() ? null : points.beside(estimate.get()));
    }

    /** The bare arithmetic of points without dates: nothing is judged but whether there is a solution. */
    static CurveView of(
            CurveModel model, CurveEstimate estimate, OptionalDouble aiccAboveBest, Points points, boolean explain) {
        Optional<LactationCurve> curve = estimate.curve();
        boolean isOk = curve.isPresent();
        int lastDay = (int) Arrays.stream(points.daysInMilk()).max().orElse(0);
        OptionalDouble peak = isOk ? curve.get().peakDaysInMilk() : OptionalDouble.empty();
        boolean hasTotal = isOk && lastDay >= 1;
        return new CurveView(
                status(isOk),
                MethodView.of(model),
                isOk ? estimate.parameters().stream().map(ParameterView::of).toList() : null,
                OrNull.ofFinite(peak),
                OrNull.ofFinite(estimate.peakDaysStandardError()),
                isOk ? OrNull.ofFinite(curve.get().peakMilkKgPerDay()) : null,
                OrNull.ofFinite(estimate.peakMilkStandardErrorKgPerDay()),
                OrNull.ofFinite(estimate.residualSdKg()),
                OrNull.ofFinite(estimate.rssKg2()),
                OrNull.ofFinite(estimate.aicc()),
                OrNull.ofFinite(aiccAboveBest),
                OrNull.ofFinite(estimate.bic()),
                OrNull.ofFinite(estimate.conditionNumber()),
                hasTotal ? OrNull.ofFinite(OptionalDouble.of(curve.get().totalKg(1, lastDay))) : null,
                hasTotal ? (Integer) lastDay : null,
                points.daysInMilk().length,
                null,
                estimate.refusal().map(WarningView::of).stream().toList(),
                null,
                explain && isOk ? points.beside(estimate) : null);
    }

    /**
     * The points a curve is fitted to.
     *
     * @param daysInMilk in the order given
     * @param milkKg same order
     */
    record Points(double[] daysInMilk, double[] milkKg) {
        private List<PointView> beside(CurveEstimate estimate) {
            double[] residuals = estimate.residualsKg();
            PointView[] views = new PointView[residuals.length];
            for (int i = 0; i < views.length; i++) {
                views[i] = new PointView(
                        daysInMilk[i],
                        milkKg[i],
                        milkKg[i] - residuals[i],
                        residuals[i],
                        OrNull.ofFinite(estimate.studentizedResidual(i)));
            }
            return List.of(views);
        }
    }

    private static String status(boolean isOk) {
        return isOk ? "ok" : "notEnoughData";
    }
}
