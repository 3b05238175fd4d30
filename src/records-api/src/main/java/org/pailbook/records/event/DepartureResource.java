package org.pailbook.records.event;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.DepartureRow;

/** The departures of a herd over HTTP. */
@Path("/v1/herds/{herd}/departures")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Departures")
public class DepartureResource extends EventResource<DepartureRow, DepartureBody> {
    private final DepartureKind kind;

    @Inject
    DepartureResource(DepartureKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<DepartureRow> kind() {
        return kind;
    }

    @Override
    protected DepartureBody view(DepartureRow record, AnimalIdentifier animal) {
        return DepartureBody.of(record, animal);
    }
}
