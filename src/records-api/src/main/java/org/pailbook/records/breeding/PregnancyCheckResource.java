package org.pailbook.records.breeding;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.PregnancyCheckRow;

/** The pregnancy checks of a herd over HTTP. */
@Path("/v1/herds/{herd}/pregnancy-checks")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Pregnancy checks")
public class PregnancyCheckResource extends EventResource<PregnancyCheckRow, PregnancyCheckBody> {
    private final PregnancyCheckKind kind;

    @Inject
    PregnancyCheckResource(PregnancyCheckKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<PregnancyCheckRow> kind() {
        return kind;
    }

    @Override
    protected PregnancyCheckBody view(PregnancyCheckRow record, AnimalIdentifier animal) {
        return PregnancyCheckBody.of(record, animal);
    }
}
