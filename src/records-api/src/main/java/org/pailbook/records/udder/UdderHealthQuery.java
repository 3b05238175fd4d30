package org.pailbook.records.udder;

import jakarta.ws.rs.QueryParam;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankLimits;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.WholeNumbers;

/** From which count on a test is high, and which limit holds for the tank. */
public class UdderHealthQuery {
    @QueryParam("highFrom")
    @Parameter(
            description =
                    "Count from which a test is high, thousand per mL, 100 to 400; if left out as in the herd's settings, else 200",
            example = "200")
    String highFrom;

    @QueryParam("tankLimit")
    @Parameter(
            description =
                    "Limit to hold the tank against, one of those the answer lists; if left out as in the herd's settings, else none: ask your"
                            + " buyer or authority",
            example = "eu-853-2004")
    String tankLimit;

    OptionalInt cut() {
        return WholeNumbers.parameter("highFrom", highFrom, CellCountCut.LEAST, CellCountCut.MOST);
    }

    Optional<TankLimit> limit() {
        if (tankLimit == null) {
            return Optional.empty();
        }
        return Optional.of(TankLimits.byId(tankLimit)
                .orElseThrow(() -> Problem.badParameter(
                        "tankLimit",
                        "expected one of "
                                + TankLimits.all().stream().map(TankLimit::id).collect(Collectors.joining(", ")),
                        tankLimit)));
    }
}
