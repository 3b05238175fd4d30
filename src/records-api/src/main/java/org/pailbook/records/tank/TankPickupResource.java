package org.pailbook.records.tank;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.TankPickupRow;

/** The tank pickups of a herd over HTTP. */
@Path("/v1/herds/{herd}/tank-pickups")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tank pickups")
public class TankPickupResource extends HerdRecordResource<TankPickupRow, TankPickupBody> {
    private final TankPickupKind kind;

    @Inject
    TankPickupResource(TankPickupKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<TankPickupRow> kind() {
        return kind;
    }

    @Override
    protected TankPickupBody view(TankPickupRow record) {
        return TankPickupBody.of(record);
    }
}
