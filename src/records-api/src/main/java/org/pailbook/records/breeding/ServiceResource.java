package org.pailbook.records.breeding;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.ServiceRow;

/** The services of a herd over HTTP. */
@Path("/v1/herds/{herd}/services")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Services")
public class ServiceResource extends EventResource<ServiceRow, ServiceBody> {
    private final ServiceKind kind;

    @Inject
    ServiceResource(ServiceKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<ServiceRow> kind() {
        return kind;
    }

    @Override
    protected ServiceBody view(ServiceRow record, AnimalIdentifier animal) {
        return ServiceBody.of(record, animal);
    }
}
