package org.pailbook.records.health;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.TreatmentRow;

/** The treatments of a herd over HTTP. */
@Path("/v1/herds/{herd}/treatments")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Treatments")
public class TreatmentResource extends EventResource<TreatmentRow, TreatmentBody> {
    private final TreatmentKind kind;

    @Inject
    TreatmentResource(TreatmentKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<TreatmentRow> kind() {
        return kind;
    }

    @Override
    protected TreatmentBody view(TreatmentRow record, AnimalIdentifier animal) {
        return TreatmentBody.of(record, animal);
    }
}
