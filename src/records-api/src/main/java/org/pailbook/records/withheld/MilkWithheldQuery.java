package org.pailbook.records.withheld;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDateTime;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.WholeNumbers;
import org.pailbook.records.wire.WireInstants;

/** For which moment, and how long colostrum stays out. */
public class MilkWithheldQuery {
    @QueryParam("at")
    @Parameter(
            description = "The moment; the end of the day asOf if left out. Not together with asOf",
            example = "2026-03-08T06:00:00Z")
    String at;

    @QueryParam("asOf")
    @Parameter(hidden = true)
    String asOf;

    @QueryParam("colostrumDays")
    @Parameter(
            description =
                    "The calving day and so many days after it stay out, 0 to 30; if left out as in the herd's settings, else 4. Local"
                            + " rules differ",
            example = "4")
    String colostrumDays;

    OptionalInt colostrumDays() {
        return WholeNumbers.parameter("colostrumDays", colostrumDays, 0, WithheldMilk.MOST_COLOSTRUM_DAYS);
    }

    void check() {
        if (at != null && asOf != null) {
            throw Problem.badParameter("at", "give at or asOf, not both", at);
        }
        WireInstants.parameter("at", at);
    }

    /** In the herd's zone. */
    LocalDateTime moment(KnownHerd known) {
        return WireInstants.parameter("at", at)
                .map(instant -> LocalDateTime.ofInstant(instant, known.herd().zone()))
                .orElseGet(() -> WithheldMilk.endOf(known.asOf().day()));
    }
}
