package org.pailbook.records.report;

import java.util.List;
import java.util.function.Consumer;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/**
 * A table of a herd. Implementations are beans; being there is all it takes to be listed and served in every form.
 *
 * @param <R> what one row is made from
 */
interface Report<R> {
    /** The name in the address: kebab-case, never changed. */
    String name();

    /** What one row is, in words. */
    String meaning();

    /** Columns of its own, in their order for good; new ones are added at the end. */
    List<Column<R>> columns();

    /** Hands on each row, in an order that stays the same while the records do. */
    void rows(HerdRow herd, AsOf asOf, Consumer<R> each);

    /** The method behind a row's figures; null where nothing is computed. */
    default PublishedMethod method(R row) {
        return null;
    }

    /** What was found about a row's figures. */
    default List<Finding> findings(R row) {
        return List.of();
    }
}
