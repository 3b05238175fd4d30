package org.pailbook.records.exchange;

import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/**
 * What every kind of record of the herd as a whole answers over HTTP. A subclass names the path and the shape.
 *
 * @param <E> the entity
 * @param <T> its shape on the wire
 */
public abstract class HerdRecordResource<E extends DatedRecord, T> extends DatedResource<E, T> {
    @Override
    protected abstract HerdRecordKind<E> kind();

    /** The record in its wire shape. */
    protected abstract T view(E record);

    @GET
    public Page<StoredView<T>> list(
            @PathParam("herd") String herdCode, @BeanParam PeriodQuery query, @Context UriInfo address) {
        return page(computed.toRead(herdCode, query.knownAt), query, null, query.first(), query.last(), address);
    }

    @Override
    final Function<E, T> views(HerdRow herd, List<E> records) {
        return this::view;
    }
}
