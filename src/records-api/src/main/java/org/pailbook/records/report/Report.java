package org.pailbook.records.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.exchange.HerdTable;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/**
 * A table of a herd. Implementations are beans; being there is all it takes to be listed, served in every form, and shown by feeds.
 *
 * @param <R> what one row is made from
 */
interface Report<R> extends HerdTable {
    /** What one row is, in words. */
    String meaning();

    /** Columns of its own, in their order for good; new ones are added at the end. */
    List<Column<R>> columns();

    /** Hands on each row, in an order that stays the same while the records do. */
    void rows(HerdRow herd, AsOf asOf, Consumer<R> each);

    /**
     * What is made of each row, in the same order.
     *
     * @param made may be asked on all processors at once, so it must change nothing
     */
    default <T> void rows(HerdRow herd, AsOf asOf, Function<R, T> made, Consumer<T> each) {
        rows(herd, asOf, row -> each.accept(made.apply(row)));
    }

    @Override
    default void writeCsv(HerdRow herd, AsOf asOf, boolean semicolon, OutputStream out) throws IOException {
        ReportForm.CSV.write(new ReportRun<>(this, herd, asOf), semicolon, out);
    }

    /** The method behind a row's figures; null where nothing is computed. */
    default PublishedMethod method(R row) {
        return null;
    }

    /** What was found about a row's figures. */
    default List<Finding> findings(R row) {
        return List.of();
    }
}
