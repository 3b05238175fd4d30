package org.pailbook.records.breeding;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.BreedingDecisionRow;

/** A herd's choices whether to serve cows, over HTTP. */
@Path("/v1/herds/{herd}/breeding-decisions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Breeding decisions")
public class BreedingDecisionResource extends EventResource<BreedingDecisionRow, BreedingDecisionBody> {
    private final BreedingDecisionKind kind;

    @Inject
    BreedingDecisionResource(BreedingDecisionKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<BreedingDecisionRow> kind() {
        return kind;
    }

    @Override
    protected BreedingDecisionBody view(BreedingDecisionRow record, AnimalIdentifier animal) {
        return BreedingDecisionBody.of(record, animal);
    }
}
