package org.pailbook.records.reproduction;

import jakarta.ws.rs.QueryParam;
import java.util.OptionalInt;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.wire.WholeNumbers;

/** How the farm breeds, where it is to be other than the herd's settings. */
public class BreedingQuery {
    @QueryParam("waitingDays")
    @Parameter(
            description =
                    "Voluntary waiting period, days after calving, 0 to 300; if left out as in the herd's settings, else 50",
            example = "60")
    String waitingDays;

    @QueryParam("checkDays")
    @Parameter(
            description =
                    "Days after a service from which a check is done, 18 to 120; if left out as in the herd's settings, else 35",
            example = "28")
    String checkDays;

    @QueryParam("dryDays")
    @Parameter(
            description = "Days dry before calving, 0 to 120; if left out as in the herd's settings, else 60",
            example = "60")
    String dryDays;

    /** What was asked, over the herd's settings; a wrong parameter is refused at once. */
    Function<SettingsInForce, BreedingSettings> over() {
        OptionalInt waiting = WholeNumbers.parameter("waitingDays", waitingDays, 0, BreedingSettings.MOST_WAITING_DAYS);
        OptionalInt check = WholeNumbers.parameter(
                "checkDays", checkDays, BreedingSettings.FEWEST_CHECK_DAYS, BreedingSettings.MOST_CHECK_DAYS);
        OptionalInt dry = WholeNumbers.parameter("dryDays", dryDays, 0, BreedingSettings.MOST_DRY_DAYS);
        return settings -> settings.breeding(waiting, check, dry);
    }
}
