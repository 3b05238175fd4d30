package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.wire.WireDates;

/** What a list of dated records may be asked for. */
public class PeriodQuery {
    @QueryParam("limit")
    @Parameter(description = "Records a page, 1 to 1000", example = "100")
    String limit;

    @QueryParam("cursor")
    @Parameter(description = "Place in the list, from the last page")
    String cursor;

    @QueryParam("from")
    @Parameter(description = "First day, included", example = "2025-01-01")
    String from;

    @QueryParam("to")
    @Parameter(description = "Last day, included", example = "2025-12-31")
    String to;

    @QueryParam("asOf")
    @Parameter(description = "Events after this day are left out; like to", example = "2025-12-31")
    String asOf;

    @QueryParam("includeWithdrawn")
    @Parameter(description = "true: list records that were withdrawn too", example = "false")
    String includeWithdrawn;

    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant are left out; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;

    @QueryParam("count")
    @Parameter(description = "true: tell how many there are on all pages", example = "false")
    String count;

    boolean isWithWithdrawn() {
        return Pages.flag("includeWithdrawn", includeWithdrawn);
    }

    boolean isCounted() {
        return Pages.flag("count", count);
    }

    LocalDate first() {
        return WireDates.parameter("from", from).orElse(null);
    }

    /** The earlier of {@code to} and {@code asOf}. */
    LocalDate last() {
        return earlier(
                WireDates.parameter("to", to).orElse(null),
                WireDates.parameter("asOf", asOf).orElse(null));
    }

    /** Null is no limit. */
    static LocalDate earlier(LocalDate one, LocalDate other) {
        return one == null || (other != null && other.isBefore(one)) ? other : one;
    }
}
