package org.pailbook.records.calculate;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The methods of this service over HTTP; any valid key may ask. */
@Path("/v1/methods")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Calculations")
public class MethodResource {
    private static final MethodsView ALL = new MethodsView(MethodCatalogue.BY_KIND.entrySet().stream()
            .flatMap(kind -> kind.getValue().stream().map(method -> MethodView.of(method, kind.getKey())))
            .toList());

    /** All methods, by kind. */
    @Schema(name = "PublishedMethods")
    public record MethodsView(List<MethodView> methods) {}

    @GET
    @Operation(operationId = "listMethods", summary = "Every published method: its source, and when it refuses")
    public MethodsView listMethods() {
        return ALL;
    }
}
