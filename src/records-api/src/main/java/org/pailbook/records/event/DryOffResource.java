package org.pailbook.records.event;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.DryOffRow;

/** The dry-offs of a herd over HTTP. */
@Path("/v1/herds/{herd}/dry-offs")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Dry-offs")
public class DryOffResource extends EventResource<DryOffRow, DryOffBody> {
    private final DryOffKind kind;

    @Inject
    DryOffResource(DryOffKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<DryOffRow> kind() {
        return kind;
    }

    @Override
    protected DryOffBody view(DryOffRow record, AnimalIdentifier animal) {
        return DryOffBody.of(record, animal);
    }
}
