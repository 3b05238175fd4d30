package org.pailbook.records.intake;

import java.util.function.BiConsumer;
import java.util.function.Function;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.wire.Fields;

/**
 * One member of a kind of record, said once: how it is read, where it is kept, how it is shown and in which column. Made by
 * {@link Members}.
 *
 * @param column of tables
 * @param required whether a record without it is refused
 * @param limit its name in the table of value limits; null if it has none
 * @param reader puts what was posted into the record, null if it was absent or wrong
 * @param value what the record holds; null if nothing
 */
public record Member<E extends DatedRecord>(
        Column column, boolean required, String limit, BiConsumer<Fields, E> reader, Function<E, ?> value) {

    /** Name on the wire. */
    public String name() {
        return column.path().get(0);
    }

    void read(Fields fields, E record) {
        if (required) {
            fields.require(name());
        }
        reader.accept(fields, record);
    }
}
