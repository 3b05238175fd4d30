package org.pailbook.records.reproduction;

import jakarta.ws.rs.QueryParam;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.records.wire.WholeNumbers;

/** How the farm breeds. */
public class BreedingQuery {
    private static final int MOST_WAITING_DAYS = 300;
    private static final int LEAST_CHECK_DAYS = 18;
    private static final int MOST_DAYS = 120;

    @QueryParam("waitingDays")
    @Parameter(
            description =
                    "Voluntary waiting period, days after calving, 0 to 300; 50 if left out, and the answer says so",
            example = "60")
    String waitingDays;

    @QueryParam("checkDays")
    @Parameter(
            description = "Days after a service from which a check is done, 18 to 120; 35 if left out",
            example = "28")
    String checkDays;

    @QueryParam("dryDays")
    @Parameter(description = "Days dry before calving, 0 to 120; 60 if left out", example = "60")
    String dryDays;

    BreedingSettings settings() {
        OptionalInt waiting = WholeNumbers.parameter("waitingDays", waitingDays, 0, MOST_WAITING_DAYS);
        OptionalInt check = WholeNumbers.parameter("checkDays", checkDays, LEAST_CHECK_DAYS, MOST_DAYS);
        OptionalInt dry = WholeNumbers.parameter("dryDays", dryDays, 0, MOST_DAYS);
        BreedingSettings usual = BreedingSettings.USUAL;
        return new BreedingSettings(waiting, check.orElse(usual.checkDays()), dry.orElse(usual.dryDays()));
    }
}
