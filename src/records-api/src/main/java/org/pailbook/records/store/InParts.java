package org.pailbook.records.store;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;

/**
 * Long lists of keys asked for part by part. SQLite takes 32,766 values in one statement and PostgreSQL 65,535, padding to a power of two
 * included; and a short list is looked up in an index where a long one may be compared with every row.
 */
public final class InParts {
    private static final int MOST_IN_ONE_QUERY = 1_000;

    private InParts() {}

    /** Hands over all keys in lists of bearable length, in order. */
    public static <T> void of(Collection<T> keys, Consumer<List<T>> query) {
        List<T> all = new ArrayList<>(keys);
        for (int from = 0; from < all.size(); from += MOST_IN_ONE_QUERY) {
            query.accept(all.subList(from, Math.min(all.size(), from + MOST_IN_ONE_QUERY)));
        }
    }

    /**
     * What to bind to a list in a query: a key that is alone as itself. Hibernate keeps its translation of a query for values bound one by one,
     * and translates anew for every list; for a single post that was most of the time it held the herd's lock.
     */
    public static Object oneOrAll(Collection<?> keys) {
        return keys.size() == 1 ? keys.iterator().next() : keys;
    }
}
