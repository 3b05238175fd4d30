package org.pailbook.records.event;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.CalvingRow;

/** The calvings of a herd over HTTP. */
@Path("/v1/herds/{herd}/calvings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Calvings")
public class CalvingResource extends EventResource<CalvingRow, CalvingBody> {
    private final CalvingKind kind;

    @Inject
    CalvingResource(CalvingKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<CalvingRow> kind() {
        return kind;
    }

    @Override
    protected CalvingBody view(CalvingRow record, AnimalIdentifier animal) {
        return CalvingBody.of(record, animal);
    }
}
