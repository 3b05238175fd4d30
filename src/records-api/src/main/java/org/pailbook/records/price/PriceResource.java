package org.pailbook.records.price;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.PriceRow;

/** The prices of a herd over HTTP. */
@Path("/v1/herds/{herd}/prices")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Prices")
public class PriceResource extends HerdRecordResource<PriceRow, PriceBody> {
    private final PriceKind kind;

    @Inject
    PriceResource(PriceKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<PriceRow> kind() {
        return kind;
    }

    @Override
    protected PriceBody view(PriceRow record) {
        return PriceBody.of(record);
    }
}
