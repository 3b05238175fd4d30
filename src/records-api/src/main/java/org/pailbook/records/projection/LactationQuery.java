package org.pailbook.records.projection;

import jakarta.ws.rs.QueryParam;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormula;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.problem.Problem;

/** Which day, which methods, how much of the arithmetic. */
public class LactationQuery {
    @QueryParam("asOf")
    @Parameter(
            description = "Events after this day take no part; today in the herd's zone if left out",
            example = "2025-11-30")
    String asOf;

    @QueryParam("correctedMilk")
    @Parameter(description = "Formula by its name; fpcm-2022 if left out", example = "fcm-4")
    String correctedMilk;

    @QueryParam("curve")
    @Parameter(description = "Curve by its name; wood-1967 if left out", example = "wilmink-1987")
    String curve;

    @QueryParam("explain")
    @Parameter(description = "true: send the parts each figure was added up from", example = "false")
    String explain;

    LactationQueries.Choice choice() {
        CorrectedMilkFormula formula = correctedMilk == null
                ? CorrectedMilkFormulas.RECOMMENDED
                : chosen(
                        "correctedMilk",
                        correctedMilk,
                        CorrectedMilkFormulas.byId(correctedMilk),
                        CorrectedMilkFormulas.all());
        CurveModel model = curve == null
                ? LactationCurves.WOOD
                : chosen("curve", curve, LactationCurves.byId(curve), LactationCurves.all());
        if (explain != null && !explain.equals("true") && !explain.equals("false")) {
            throw Problem.badParameter("explain", "expected true or false", explain);
        }
        return new LactationQueries.Choice(formula, model, "true".equals(explain));
    }

    private static <M extends PublishedMethod> M chosen(
            String parameter, String name, Optional<M> found, java.util.List<? extends M> all) {
        return found.orElseThrow(() -> Problem.badParameter(
                parameter, "expected one of " + all.stream().map(M::id).collect(Collectors.joining(", ")), name));
    }
}
