package org.pailbook.records.cow;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.exchange.Pages;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.wire.WireDates;

/** What a list of animals may be asked for. */
public class AnimalListQuery {
    @QueryParam("limit")
    @Parameter(description = "Animals a page, 1 to 1000", example = "100")
    String limit;

    @QueryParam("cursor")
    @Parameter(description = "Place in the list, from the last page")
    String cursor;

    @QueryParam("includeWithdrawn")
    @Parameter(description = "true: list animals that were withdrawn too", example = "false")
    String includeWithdrawn;

    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant are left out; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;

    @QueryParam("asOf")
    @Parameter(description = "Animals born after this day are left out", example = "2025-12-31")
    String asOf;

    @QueryParam("count")
    @Parameter(description = "true: tell how many there are on all pages", example = "false")
    String count;

    KnownAnimals.Selection selection() {
        return new KnownAnimals.Selection(
                Pages.flag("includeWithdrawn", includeWithdrawn),
                WireDates.parameter("asOf", asOf).orElse(null));
    }

    boolean isCounted() {
        return Pages.flag("count", count);
    }
}
