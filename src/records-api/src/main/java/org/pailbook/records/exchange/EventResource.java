package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.Animals;
import org.pailbook.records.store.HerdRow;
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
    Animals animals;

    @Override
    protected abstract EventKind<E> kind();

    /** The record in its wire shape. */
    protected abstract T view(E record, AnimalIdentifier animal);

    protected final Page<StoredView<T>> list(String herdCode, ListQuery query, UriInfo address) {
        HerdRow herd = access.toRead(herdCode);
        return page(herd, query, query.animal == null ? null : access.animal(herd, query.animal).id, address);
    }

    @Override
    final Function<E, T> views(HerdRow herd, List<E> records) {
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(
                herd.id,
                records.stream().map(record -> record.animalId).distinct().toList());
        return record -> view(record, shown.getOrDefault(record.animalId, new AnimalIdentifier("id", record.animalId)));
    }
}
