package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.pailbook.records.store.HerdRow;

/**
 * What was worked out of a herd, kept under the number of its last change and a day: any write, by this process or another one on the same
 * database, is seen at the next request. The least lately used are dropped.
 */
final class KeptByState<V> {
    private final Map<Key, V> kept;

    private record Key(String herdId, long changeSeq, LocalDate asOf) {}

    /** @param most entries kept */
    KeptByState(int most) {
        kept = new LinkedHashMap<>(most, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Key, V> eldest) {
                return size() > most;
            }
        };
    }

    /** Worked out if it is not there; two requests at once may both do it and come to the same. */
    V of(HerdRow herd, LocalDate asOf, Supplier<V> made) {
        Key key = new Key(herd.id, herd.changeSeq, asOf);
        synchronized (kept) {
            V known = kept.get(key);
            if (known != null) {
                return known;
            }
        }
        V value = made.get();
        synchronized (kept) {
            kept.put(key, value);
        }
        return value;
    }
}
