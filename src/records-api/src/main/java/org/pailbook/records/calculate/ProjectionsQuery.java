package org.pailbook.records.calculate;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.WireDates;

/** What a table cannot hold, and how much to tell. */
public class ProjectionsQuery {
    @QueryParam("asOf")
    @Parameter(
            description = "With a table only: later test days take no part. In JSON it is a member.",
            example = "2002-06-30")
    String asOf;

    @QueryParam("explain")
    @Parameter(description = "With JSON only; true: send what each test day contributed", example = "false")
    String explain;

    Optional<LocalDate> asOfTable(boolean isTable) {
        if (!isTable && asOf != null) {
            throw Problem.badParameter("asOf", "with JSON it is a member of the body", asOf);
        }
        return WireDates.parameter("asOf", asOf);
    }

    boolean isExplained(boolean isTable) {
        if (isTable && explain != null) {
            throw Problem.badParameter("explain", "a table has no room for it; send JSON", explain);
        }
        return MethodChoice.flag("explain", explain);
    }
}
