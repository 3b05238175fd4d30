package org.pailbook.records.milking;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.MilkingRow;

/** The milkings of a herd over HTTP. */
@Path("/v1/herds/{herd}/milkings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Milkings")
public class MilkingResource extends EventResource<MilkingRow, MilkingBody> {
    private final MilkingKind kind;

    @Inject
    MilkingResource(MilkingKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<MilkingRow> kind() {
        return kind;
    }

    @Override
    protected MilkingBody view(MilkingRow record, AnimalIdentifier animal) {
        return MilkingBody.of(record, animal);
    }
}
