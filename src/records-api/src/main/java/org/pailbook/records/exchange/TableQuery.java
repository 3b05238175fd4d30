package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.Events;
import org.pailbook.records.wire.WireDates;

/** What the table of a kind may be asked for. */
public class TableQuery {
    @QueryParam("from")
    @Parameter(description = "First day, included; not for animals", example = "2025-01-01")
    String from;

    @QueryParam("to")
    @Parameter(description = "Last day, included; not for animals", example = "2025-12-31")
    String to;

    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant are left out; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;

    @QueryParam("asOf")
    @Parameter(
            description = "Events after this day are left out, like to; animals born after it are",
            example = "2025-12-31")
    String asOf;

    @QueryParam("locale")
    @Parameter(description = "semicolon: semicolons between cells, comma in numbers", example = "semicolon")
    String locale;

    boolean isWithSemicolons() {
        if (locale != null && !locale.equals("semicolon")) {
            throw Problem.badParameter("locale", "expected semicolon, or leave it out", locale);
        }
        return locale != null;
    }

    LocalDate first() {
        return WireDates.parameter("from", from).orElse(null);
    }

    /** The earlier of {@code to} and {@code asOf}. */
    LocalDate last() {
        return PeriodQuery.earlier(WireDates.parameter("to", to).orElse(null), asOf());
    }

    LocalDate asOf() {
        return WireDates.parameter("asOf", asOf).orElse(null);
    }

    Events.Selection after(Events.Position position) {
        return new Events.Selection(null, first(), last(), position, false);
    }
}
