package org.pailbook.records.projection;

import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.records.computed.MethodChoice;

/** Which curves, for which day. */
public class CurveQuery {
    @QueryParam("model")
    @Parameter(description = "Curve by its name; all of them side by side if left out", example = "wood-1967")
    String model;

    @QueryParam("explain")
    @Parameter(description = "true: send each test beside the curve", example = "false")
    String explain;

    List<CurveModel> models() {
        return MethodChoice.ofParameter("model", model, LactationCurves.all())
                .map(List::of)
                .orElse(LactationCurves.all());
    }

    boolean isExplained() {
        return MethodChoice.flag("explain", explain);
    }
}
