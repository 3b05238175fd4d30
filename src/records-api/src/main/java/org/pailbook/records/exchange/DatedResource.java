package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.intake.DatedKind;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/**
 * What every kind of dated record answers over HTTP: list, one, post, post many.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 * @see EventResource
 * @see HerdRecordResource
 */
public abstract class DatedResource<E extends DatedRecord, T> {
    @Inject
    HerdAccess access;

    @Inject
    RecordDesk desk;

    @Inject
    Events events;

    protected abstract DatedKind<E> kind();

    /** How these records, all of one herd, are brought into their wire shape. */
    abstract Function<E, T> views(HerdRow herd, List<E> records);

    final Page<StoredView<T>> page(HerdRow herd, PeriodQuery query, String animalId, UriInfo address) {
        int limit = Pages.limit(query.limit);
        Events.Position after = query.cursor == null ? null : Cursor.position(query.cursor);
        List<E> found = new ArrayList<>(events.list(
                kind().entity(),
                herd.id,
                new Events.Selection(animalId, query.first(), query.last(), after),
                limit + 1));
        String next = null;
        if (found.size() > limit) {
            found.remove(limit);
            E last = found.get(limit - 1);
            next = Pages.withCursor(address, Cursor.of(last.date, last.id));
        }
        Function<E, T> views = views(herd, found);
        return new Page<>(found.stream().map(record -> stored(record, views)).toList(), next);
    }

    protected final RestResponse<StoredView<T>> one(String herdCode, String id) {
        HerdRow herd = access.toRead(herdCode);
        if (!RecordIds.isId(id)) {
            throw Problem.notFound();
        }
        E record = events.byId(kind().entity(), herd.id, id)
                .filter(found -> !found.withdrawn)
                .orElseThrow(Problem::notFound);
        return RestResponse.ResponseBuilder.ok(stored(record, views(herd, List.of(record))))
                .header(HttpHeaders.ETAG, "\"" + record.version + "\"")
                .build();
    }

    protected final RestResponse<PostedAnswer<T>> post(String herdCode, InputStream body, HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return desk.post(
                kind(),
                herd,
                body,
                headers,
                record -> views(herd, List.of(record)).apply(record));
    }

    protected final Response postMany(String herdCode, BulkQuery query, InputStream body, HttpHeaders headers) {
        return desk.postMany(kind(), access.toWrite(herdCode), query, body, headers);
    }

    private StoredView<T> stored(E record, Function<E, T> views) {
        return new StoredView<>(record.id, record.version, record.recordedAt.toString(), views.apply(record));
    }
}
