package org.pailbook.records.report;

import java.util.function.Function;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.AnimalIdentifier;

/** The first columns of every report with animals in it: which animal. */
final class CowColumns {
    private CowColumns() {}

    static <R> Column<R> scheme(Function<R, AnimalIdentifier> animal) {
        return Column.text(
                "animal_scheme",
                "Who gave the number in animal_id",
                row -> animal.apply(row).scheme());
    }

    static <R> Column<R> id(Function<R, AnimalIdentifier> animal) {
        return Column.text(
                "animal_id",
                "Ear tag or other number; read it as text, leading zeros count",
                row -> animal.apply(row).id());
    }

    static <R> Column<R> name(Function<R, KnownCow> cow) {
        return Column.text("name", "Name as entered", row -> cow.apply(row).name());
    }
}
