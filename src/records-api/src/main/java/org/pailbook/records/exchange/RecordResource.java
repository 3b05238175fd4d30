package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.VersionView;

/**
 * What every kind of record answers for one record by its id: replace, patch, withdraw, history. Nothing of it is written again in a
 * kind; names and bodies in the description of the API come from the path.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 */
public abstract class RecordResource<E extends StoredRecord, T> {
    @Inject
    HerdAccess access;

    @Inject
    VersionDesk versionDesk;

    @Inject
    ComputedDesk computed;

    protected abstract RecordKind<E> kind();

    protected abstract LocalDate dayOf(E record);

    /** How records of that herd are shown. */
    protected abstract Function<E, T> viewIn(HerdRow herd);

    /** One record of the herd, withdrawn or not, as known at the last change the herd's row names. */
    protected abstract Optional<E> byId(HerdRow herd, String id);

    @PUT
    @Path("/{id}")
    public RestResponse<PostedAnswer<T>> replace(
            @PathParam("herd") String herdCode,
            @PathParam("id") String id,
            InputStream body,
            @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.replace(kind(), herd, id, body, headers, viewIn(herd));
    }

    @PATCH
    @Path("/{id}")
    public RestResponse<PostedAnswer<T>> patch(
            @PathParam("herd") String herdCode,
            @PathParam("id") String id,
            InputStream body,
            @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.patch(kind(), herd, id, body, headers, viewIn(herd));
    }

    @DELETE
    @Path("/{id}")
    public RestResponse<PostedAnswer<T>> withdraw(
            @PathParam("herd") String herdCode, @PathParam("id") String id, @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return versionDesk.withdraw(kind(), herd, id, headers, viewIn(herd));
    }

    @GET
    @Path("/{id}/history")
    public Page<VersionView<T>> history(
            @PathParam("herd") String herdCode, @PathParam("id") String id, @BeanParam KnownAtQuery query) {
        HerdRow herd = computed.toRead(herdCode, query);
        E last = known(herd, id).filter(record -> query.reaches(dayOf(record))).orElseThrow(Problem::notFound);
        return versionDesk.history(kind(), last, viewIn(herd));
    }

    /** One record of the herd, withdrawn or not, if the text is an id at all. */
    protected final Optional<E> known(HerdRow herd, String id) {
        return RecordIds.isId(id) ? byId(herd, id) : Optional.empty();
    }
}
