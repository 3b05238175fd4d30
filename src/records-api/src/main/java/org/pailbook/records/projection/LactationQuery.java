package org.pailbook.records.projection;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.wire.WireDates;

/** Which day, which methods, how much of the arithmetic. */
public class LactationQuery {
    @QueryParam("correctedMilk")
    @Parameter(description = "Formula by its name; fpcm-2022 if left out", example = "fcm-4")
    String correctedMilk;

    @QueryParam("curve")
    @Parameter(description = "Curve by its name; wood-1967 if left out", example = "wilmink-1987")
    String curve;

    @QueryParam("explain")
    @Parameter(description = "true: send the parts each figure was added up from", example = "false")
    String explain;

    @QueryParam("dryOffDate")
    @Parameter(
            description = "A planned dry-off: what she is expected to give up to it is added",
            example = "2026-05-31")
    String dryOffDate;

    @QueryParam("daily")
    @Parameter(description = "true: send each day 1 to 305 with its 80 % band", example = "false")
    String daily;

    /** @param ofOneLactation whether one lactation was asked for, not a list */
    LactationQueries.Choice choice(boolean ofOneLactation) {
        return new LactationQueries.Choice(
                MethodChoice.ofParameter("correctedMilk", correctedMilk, CorrectedMilkFormulas.all())
                        .orElse(CorrectedMilkFormulas.RECOMMENDED),
                MethodChoice.ofParameter("curve", curve, LactationCurves.all()).orElse(LactationCurves.WOOD),
                MethodChoice.flag("explain", explain),
                WireDates.parameter("dryOffDate", dryOffDate).map(date -> new DryOffDate(date, ofOneLactation)),
                MethodChoice.flag("daily", daily));
    }
}
