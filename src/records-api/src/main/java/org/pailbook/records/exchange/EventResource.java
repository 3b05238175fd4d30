package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/**
 * What every kind of event of one animal answers over HTTP. A subclass names the path and the shape.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 */
public abstract class EventResource<E extends AnimalEvent, T> extends DatedResource<E, T> {
    @Inject
    KnownAnimals animals;

    @Inject
    CowRecords cows;

    @Override
    protected abstract EventKind<E> kind();

    /** The record in its wire shape. */
    protected abstract T view(E record, AnimalIdentifier animal);

    @GET
    public Page<StoredView<T>> list(
            @PathParam("herd") String herdCode, @BeanParam ListQuery query, @Context UriInfo address) {
        HerdRow herd = computed.toRead(herdCode, query.knownAt);
        AnimalRow animal = query.animal == null ? null : access.animal(herd, query.animal);
        LocalDate first = query.first();
        LocalDate last = query.last();
        if (query.parity != null) {
            LactationDays days = LactationDays.of(query.parity, animal, herd, cows);
            first = first == null || days.first().isAfter(first) ? days.first() : first;
            last = last == null || days.last().isBefore(last) ? days.last() : last;
        }
        return page(herd, query, animal == null ? null : animal.id, first, last, address);
    }

    @Override
    final Function<E, T> views(HerdRow herd, List<E> records) {
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(
                herd, records.stream().map(record -> record.animalId).distinct().toList());
        return record -> view(record, shown.getOrDefault(record.animalId, new AnimalIdentifier("id", record.animalId)));
    }
}
