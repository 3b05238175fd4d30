package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.intake.DatedKind;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/**
 * What every kind of dated record answers over HTTP: list, one, post, post many. As in {@link RecordResource}, names, summaries and
 * bodies in the description of the API come from the path.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 * @see EventResource
 * @see HerdRecordResource
 */
public abstract class DatedResource<E extends DatedRecord, T> extends RecordResource<E, T> {
    @Inject
    RecordDesk desk;

    @Inject
    Events events;

    @Inject
    Cursors cursors;

    @Override
    protected abstract DatedKind<E> kind();

    @Override
    protected final LocalDate dayOf(E record) {
        return record.date;
    }

    /** How these records, all of one herd, are brought into their wire shape. */
    abstract Function<E, T> views(HerdRow herd, List<E> records);

    @Override
    protected final Function<E, T> viewIn(HerdRow herd) {
        return record -> views(herd, List.of(record)).apply(record);
    }

    @Override
    protected final Optional<E> byId(HerdRow herd, String id) {
        return events.byId(kind().entity(), herd, id);
    }

    /**
     * One page of a list.
     *
     * @param animalId only this animal; null for all
     * @param from first day, included; null for no limit
     * @param to last day, included; null for no limit
     */
    final Page<StoredView<T>> page(
            HerdRow herd, PeriodQuery query, String animalId, LocalDate from, LocalDate to, UriInfo address) {
        int limit = Pages.limit(query.limit);
        Events.Selection selection = new Events.Selection(
                animalId, from, to, cursors.position(address, query.cursor), query.isWithWithdrawn());
        List<E> found = new ArrayList<>(events.list(kind().entity(), herd, selection, limit + 1));
        String next = null;
        if (found.size() > limit) {
            found.remove(limit);
            E last = found.get(limit - 1);
            next = cursors.next(address, last.date, last.id);
        }
        Function<E, T> views = views(herd, found);
        return new Page<>(
                found.stream().map(record -> VersionDesk.stored(record, views)).toList(),
                next,
                query.isCounted() ? (Long) events.count(kind().entity(), herd, selection) : null);
    }

    @GET
    @Path("/{id}")
    public RestResponse<StoredView<T>> one(
            @PathParam("herd") String herdCode,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        HerdRow herd = computed.toRead(herdCode, query);
        E record = known(herd, id)
                .filter(found -> !found.withdrawn && query.reaches(found.date))
                .orElseThrow(Problem::notFound);
        return versionDesk.show(record, viewIn(herd), headers);
    }

    @POST
    public RestResponse<PostedAnswer<T>> post(
            @PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return desk.post(kind(), herd, body, headers, viewIn(herd));
    }

    @POST
    @Path("/bulk")
    public Response postMany(
            @PathParam("herd") String herdCode,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return desk.postMany(kind(), access.toWrite(herdCode), query, body, headers);
    }
}
