package org.pailbook.records.app;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.runtime.OpenApiConstants;
import io.quarkus.smallrye.openapi.runtime.OpenApiDocumentService;
import io.smallrye.openapi.runtime.io.Format;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.pailbook.records.access.WithoutKey;

/** The description of the API as a page to read in a browser; it needs no script, no internet and no key. */
@Path("/v1/docs")
@WithoutKey
public class ApiPageResource {
    private final OpenApiDocumentService documents;

    @Inject
    ApiPageResource(OpenApiDocumentService documents) {
        this.documents = documents;
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    @Operation(hidden = true)
    public Response read() throws IOException {
        byte[] document = documents.getDocument(OpenApiConstants.DEFAULT_DOCUMENT_NAME, Format.JSON);
        String page = new ApiPage(new ObjectMapper().readTree(document)).html();
        return Response.ok(page.getBytes(StandardCharsets.UTF_8), "text/html; charset=utf-8")
                .header("Content-Security-Policy", ApiPage.POLICY)
                .build();
    }
}
