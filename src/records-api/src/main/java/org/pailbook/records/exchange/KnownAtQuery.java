package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.wire.WireDates;

/** What is to be known for one record, and up to which day it must lie. */
public class KnownAtQuery {
    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant are left out; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;

    @QueryParam("asOf")
    @Parameter(
            description = "A record of a later day is not found; whatever day it has if left out",
            example = "2025-12-31")
    String asOf;

    /** Whether anything but what is known now is asked for. */
    public boolean isOfThePast() {
        return knownAt != null;
    }

    /** Whether something of that day is shown; what has no day always is. */
    public boolean reaches(LocalDate day) {
        LocalDate last = WireDates.parameter("asOf", asOf).orElse(null);
        return last == null || day == null || !day.isAfter(last);
    }
}
