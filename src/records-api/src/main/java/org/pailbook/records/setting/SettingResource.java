package org.pailbook.records.setting;

import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.SettingRow;

/** The settings of a herd over HTTP. */
@Path("/v1/herds/{herd}/settings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Settings")
public class SettingResource extends HerdRecordResource<SettingRow, SettingBody> {
    private final SettingKind kind;

    @Inject
    SettingResource(SettingKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<SettingRow> kind() {
        return kind;
    }

    @Override
    protected SettingBody view(SettingRow record) {
        return SettingBody.of(record);
    }
}
