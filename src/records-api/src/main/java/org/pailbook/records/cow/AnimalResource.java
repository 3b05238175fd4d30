package org.pailbook.records.cow;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.exchange.BulkQuery;
import org.pailbook.records.exchange.ComputedDesk;
import org.pailbook.records.exchange.Cursors;
import org.pailbook.records.exchange.KnownAtQuery;
import org.pailbook.records.exchange.Pages;
import org.pailbook.records.exchange.RecordDesk;
import org.pailbook.records.exchange.VersionDesk;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;
import org.pailbook.records.wire.VersionView;

/** The animals of a herd over HTTP. */
@Path("/v1/herds/{herd}/animals")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Animals")
public class AnimalResource {
    private final HerdAccess access;
    private final ComputedDesk computed;
    private final Cursors cursors;
    private final KnownAnimals animals;
    private final RecordDesk desk;
    private final VersionDesk versionDesk;
    private final AnimalKind kind;

    @Inject
    AnimalResource(
            HerdAccess access,
            ComputedDesk computed,
            Cursors cursors,
            KnownAnimals animals,
            RecordDesk desk,
            VersionDesk versionDesk,
            AnimalKind kind) {
        this.access = access;
        this.computed = computed;
        this.cursors = cursors;
        this.animals = animals;
        this.desk = desk;
        this.versionDesk = versionDesk;
        this.kind = kind;
    }

    @GET
    @Operation(
            operationId = "listAnimals",
            summary = "The animals of a herd, in the order in which they were first posted")
    public Page<StoredView<AnimalBody>> listAnimals(
            @PathParam("herd") String herdCode, @BeanParam AnimalListQuery query, @Context UriInfo address) {
        HerdRow herd = computed.toRead(herdCode, query.knownAt);
        int most = Pages.limit(query.limit);
        List<AnimalRow> found = new ArrayList<>(
                animals.page(herd, cursors.after(address, query.cursor, RecordIds::isId), most + 1, query.selection()));
        String next = null;
        if (found.size() > most) {
            found.remove(most);
            next = cursors.next(address, found.get(most - 1).id);
        }
        return new Page<>(
                found.stream().map(AnimalResource::stored).toList(),
                next,
                query.isCounted() ? (Long) animals.count(herd, query.selection()) : null);
    }

    @GET
    @Path("/{animal}")
    @Operation(operationId = "getAnimal", summary = "One animal, by our id or scheme:id")
    public RestResponse<StoredView<AnimalBody>> getAnimal(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        HerdRow herd = computed.toRead(herdCode, query);
        return versionDesk.show(born(access.animal(herd, animal), query), AnimalBody::of, headers);
    }

    @PUT
    @Path("/{animal}")
    public RestResponse<PostedAnswer<AnimalBody>> replace(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            InputStream body,
            @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.replace(kind, herd, access.animal(herd, animal).id, body, headers, AnimalBody::of);
    }

    @PATCH
    @Path("/{animal}")
    public RestResponse<PostedAnswer<AnimalBody>> patch(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            InputStream body,
            @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.patch(kind, herd, access.animal(herd, animal).id, body, headers, AnimalBody::of);
    }

    @DELETE
    @Path("/{animal}")
    public RestResponse<PostedAnswer<AnimalBody>> withdraw(
            @PathParam("herd") String herdCode, @PathParam("animal") String animal, @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.withdraw(kind, herd, access.animal(herd, animal).id, headers, AnimalBody::of);
    }

    @GET
    @Path("/{animal}/history")
    public Page<VersionView<AnimalBody>> history(
            @PathParam("herd") String herdCode, @PathParam("animal") String animal, @BeanParam KnownAtQuery query) {
        HerdRow herd = computed.toRead(herdCode, query);
        return versionDesk.history(kind, born(access.animalEverKnown(herd, animal), query), AnimalBody::of);
    }

    private static AnimalRow born(AnimalRow animal, KnownAtQuery query) {
        if (!query.reaches(animal.birthDate)) {
            throw Problem.notFound();
        }
        return animal;
    }

    @POST
    @Operation(operationId = "upsertAnimal", summary = "Post one animal; a resend changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = AnimalBody.class)))
    public RestResponse<PostedAnswer<AnimalBody>> upsertAnimal(
            @PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers) {
        return desk.post(kind, access.toWrite(herdCode), body, headers, AnimalBody::of);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkAnimals", summary = "Post many animals as JSON, NDJSON or CSV")
    public Response bulkAnimals(
            @PathParam("herd") String herdCode,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return desk.postMany(kind, access.toWrite(herdCode), query, body, headers);
    }

    private static StoredView<AnimalBody> stored(AnimalRow animal) {
        return StoredView.of(animal.id, animal.version, animal.recordedAt, animal.withdrawn, AnimalBody.of(animal));
    }
}
