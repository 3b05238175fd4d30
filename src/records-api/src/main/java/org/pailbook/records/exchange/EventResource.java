package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.Animals;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/**
 * What every kind of event answers over HTTP: list, one, post, post many, and what {@link RecordResource} adds. A subclass names the path and the shape.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 */
public abstract class EventResource<E extends AnimalEvent, T> extends RecordResource<E, T> {
    @Inject
    RecordDesk desk;

    @Inject
    Events events;

    @Inject
    Animals animals;

    @Override
    protected abstract EventKind<E> kind();

    /** The record in its wire shape. */
    protected abstract T view(E record, AnimalIdentifier animal);

    protected final Page<StoredView<T>> list(String herdCode, ListQuery query, UriInfo address) {
        HerdRow herd = access.toRead(herdCode);
        int limit = Pages.limit(query.limit);
        String animalId = null;
        if (query.animal != null) {
            animalId = access.animal(herd, query.animal).id;
        }
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
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(
                herd.id,
                found.stream().map(record -> record.animalId).distinct().toList());
        return new Page<>(
                found.stream()
                        .map(record -> stored(record, shown.get(record.animalId)))
                        .toList(),
                next);
    }

    protected final RestResponse<StoredView<T>> one(String herdCode, String id, HttpHeaders headers) {
        HerdRow herd = access.toRead(herdCode);
        E record = known(herd, id).filter(found -> !found.withdrawn).orElseThrow(Problem::notFound);
        return versionDesk.show(record, viewIn(herd), headers);
    }

    @Override
    protected final Optional<E> byId(HerdRow herd, String id) {
        return events.byId(kind().entity(), herd.id, id);
    }

    @Override
    protected final Function<E, T> viewIn(HerdRow herd) {
        return record -> view(record, identifier(herd, record));
    }

    protected final RestResponse<PostedAnswer<T>> post(String herdCode, InputStream body, HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        return desk.post(kind(), herd, body, headers, viewIn(herd));
    }

    protected final jakarta.ws.rs.core.Response postMany(
            String herdCode, BulkQuery query, InputStream body, HttpHeaders headers) {
        return desk.postMany(kind(), access.toWrite(herdCode), query, body, headers);
    }

    private StoredView<T> stored(E record, AnimalIdentifier animal) {
        return VersionDesk.stored(record, found -> view(found, animal));
    }

    private AnimalIdentifier identifier(HerdRow herd, E record) {
        return animals.byId(herd.id, record.animalId)
                .map(EventResource::shown)
                .orElseGet(() -> new AnimalIdentifier("id", record.animalId));
    }

    private static AnimalIdentifier shown(AnimalRow animal) {
        return animal.identifiers.isEmpty() ? new AnimalIdentifier("id", animal.id) : animal.identifiers.get(0);
    }
}
