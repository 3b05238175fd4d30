package org.pailbook.records.tank;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.MilkUseRow;

/** The uses of milk of a herd over HTTP. */
@Path("/v1/herds/{herd}/milk-uses")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Uses of milk")
public class MilkUseResource extends HerdRecordResource<MilkUseRow, MilkUseBody> {
    private final MilkUseKind kind;

    @Inject
    MilkUseResource(MilkUseKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<MilkUseRow> kind() {
        return kind;
    }

    @Override
    protected MilkUseBody view(MilkUseRow record) {
        return MilkUseBody.of(record);
    }
}
