package org.pailbook.records.store;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;

/** Long lists of keys asked for part by part: PostgreSQL takes 65,535 values in one statement, padding to a power of two included. */
public final class InParts {
    private static final int MOST_IN_ONE_QUERY = 10_000;

    private InParts() {}

    /** Hands over all keys in lists of bearable length, in order. */
    public static <T> void of(Collection<T> keys, Consumer<List<T>> query) {
        List<T> all = new ArrayList<>(keys);
        for (int from = 0; from < all.size(); from += MOST_IN_ONE_QUERY) {
            query.accept(all.subList(from, Math.min(all.size(), from + MOST_IN_ONE_QUERY)));
        }
    }
}
