package org.pailbook.records.projection;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * A curve fitted to the tests of one lactation, or why none is shown.
 *
 * @param status ok, or notEnoughData when the fit is refused
 */
@Schema(
        name = "LactationCurve",
        description = "A curve fitted to one lactation's tests; it sums them up and projects nothing")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CurveView(
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        MethodView method,
        List<ParameterView> parameters,
        @Schema(description = "Day of the highest milk") Double peakDaysInMilk,
        @Schema(description = "Milk on that day, kg") Double peakMilkKgPerDay,

        @Schema(description = "Spread of the tests about the curve, kg per day")
        Double residualSdKg,

        int testDays,
        List<WarningView> warnings) {

    /** One parameter, named as in the paper. */
    @Schema(name = "CurveParameter")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ParameterView(String name, double value, String unit, Double standardError) {}

    static CurveView of(CurveFit fit) {
        return new CurveView(
                fit.isRefused() ? "notEnoughData" : "ok",
                MethodView.of(fit.model()),
                fit.isRefused()
                        ? null
                        : fit.parameters().stream()
                                .map(parameter -> new ParameterView(
                                        parameter.name(),
                                        parameter.value(),
                                        parameter.unit(),
                                        boxed(parameter.standardError())))
                                .toList(),
                boxed(fit.peakDaysInMilk()),
                boxed(fit.peakMilkKgPerDay()),
                boxed(fit.residualSdKg()),
                fit.testCount(),
                fit.findings().stream().map(WarningView::of).toList());
    }

    private static Double boxed(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
