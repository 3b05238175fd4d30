package org.pailbook.records.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.wire.Fields;

/** Says the members of a kind of record one after the other. Each has its column, named as the member in snake_case. */
public final class Members<E extends DatedRecord> {
    private static final int LONGEST_NOTE = 4000;

    private final List<Member<E>> members = new ArrayList<>();

    private Members() {}

    /** Begins with no member. */
    public static <E extends DatedRecord> Members<E> of(Class<E> entity) {
        return new Members<>();
    }

    /** Words of at most {@code longest} characters. */
    public Members<E> text(String name, int longest, Function<E, String> value, BiConsumer<E, String> keep) {
        return add(name, Column::text, (fields, member) -> fields.text(member, longest), value, keep);
    }

    /** The user's own words, in a member called {@code note}. */
    public Members<E> note(Function<E, String> value, BiConsumer<E, String> keep) {
        return text("note", LONGEST_NOTE, value, keep);
    }

    /** One of some codes. */
    public Members<E> code(String name, List<String> codes, Function<E, String> value, BiConsumer<E, String> keep) {
        return add(name, Column::text, (fields, member) -> fields.code(member, codes), value, keep);
    }

    public Members<E> date(String name, Function<E, LocalDate> value, BiConsumer<E, LocalDate> keep) {
        return add(name, Column::text, Fields::date, value, keep);
    }

    public Members<E> number(String name, Function<E, Double> value, BiConsumer<E, Double> keep) {
        return add(name, Column::number, Fields::number, value, keep);
    }

    /** A whole number between two bounds, both allowed. */
    public Members<E> integer(
            String name, int least, int most, Function<E, Integer> value, BiConsumer<E, Integer> keep) {
        return add(name, Column::number, (fields, member) -> fields.integer(member, least, most), value, keep);
    }

    /** {@code true} or {@code false}. */
    public Members<E> flag(String name, Function<E, Boolean> value, BiConsumer<E, Boolean> keep) {
        return add(name, Column::flag, Fields::flag, value, keep);
    }

    /** Refuses a record without the member named last. */
    public Members<E> needed() {
        Member<E> last = members.remove(members.size() - 1);
        members.add(new Member<>(last.column(), true, last.limit(), last.reader(), last.value()));
        return this;
    }

    /** Holds the member named last against the limit of this name. */
    public Members<E> within(String limit) {
        Member<E> last = members.remove(members.size() - 1);
        members.add(new Member<>(last.column(), last.required(), limit, last.reader(), last.value()));
        return this;
    }

    /** All of them, in the order in which they were said. */
    public List<Member<E>> list() {
        return List.copyOf(members);
    }

    private <V> Members<E> add(
            String name,
            BiFunction<String, String, Column> column,
            BiFunction<Fields, String, V> read,
            Function<E, V> value,
            BiConsumer<E, V> keep) {
        String columnName = name.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
        members.add(new Member<>(
                column.apply(columnName, name),
                false,
                null,
                (fields, record) -> keep.accept(record, read.apply(fields, name)),
                value));
        return this;
    }
}
