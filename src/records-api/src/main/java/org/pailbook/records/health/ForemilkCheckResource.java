package org.pailbook.records.health;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.ForemilkCheckRow;

/** The foremilk checks of a herd over HTTP. */
@Path("/v1/herds/{herd}/foremilk-checks")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Foremilk checks")
public class ForemilkCheckResource extends EventResource<ForemilkCheckRow, ForemilkCheckBody> {
    private final ForemilkCheckKind kind;

    @Inject
    ForemilkCheckResource(ForemilkCheckKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<ForemilkCheckRow> kind() {
        return kind;
    }

    @Override
    protected ForemilkCheckBody view(ForemilkCheckRow record, AnimalIdentifier animal) {
        return ForemilkCheckBody.of(record, animal);
    }
}
