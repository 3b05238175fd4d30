package org.pailbook.records.withheld;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDateTime;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.WholeNumbers;
import org.pailbook.records.wire.WireInstants;

/** For which moment, and how long colostrum stays out. */
public class MilkWithheldQuery {
    private static final int MOST_COLOSTRUM_DAYS = 30;

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
                    "The calving day and so many days after it stay out, 0 to 30; 4 if left out. Local rules differ",
            example = "4")
    String colostrumDays;

    WithheldMilk rules() {
        return WithheldMilk.withColostrumDays(
                WholeNumbers.parameter("colostrumDays", colostrumDays, 0, MOST_COLOSTRUM_DAYS)
                        .orElse(WithheldMilk.USUAL.colostrumDays()));
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
                .orElseGet(() -> known.asOf().day().plusDays(1).atStartOfDay().minusSeconds(1));
    }
}
