package org.pailbook.records.tank;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.TankReadingRow;

/** The tank readings of a herd over HTTP. */
@Path("/v1/herds/{herd}/tank-readings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tank readings")
public class TankReadingResource extends HerdRecordResource<TankReadingRow, TankReadingBody> {
    private final TankReadingKind kind;

    @Inject
    TankReadingResource(TankReadingKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<TankReadingRow> kind() {
        return kind;
    }

    @Override
    protected TankReadingBody view(TankReadingRow record) {
        return TankReadingBody.of(record);
    }
}
