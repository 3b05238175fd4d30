package org.pailbook.records.store;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;

/**
 * What was worked out of a herd, kept under the number of its last change and a day: any write, by this process or another one on the same
 * database, is seen at the next request. What was kept of an older state of the herd goes then, and the least lately used beyond a number or
 * a weight.
 */
public final class KeptByState<V> {
    private final int most;
    private final int mostWeight;
    private final ToIntFunction<V> weight;
    private final LinkedHashMap<Key, V> kept = new LinkedHashMap<>(16, 0.75f, true);

    private record Key(String herdId, long changeSeq, LocalDate asOf) {}

    /** @param most entries kept */
    public KeptByState(int most) {
        this(most, most, one -> 1);
    }

    /**
     * @param most entries kept
     * @param mostWeight of all of them together; one that weighs more alone is not kept
     */
    public KeptByState(int most, int mostWeight, ToIntFunction<V> weight) {
        this.most = most;
        this.mostWeight = mostWeight;
        this.weight = weight;
    }

    /** Worked out if it is not there; two requests at once may both do it and come to the same. */
    public V of(HerdRow herd, LocalDate asOf, Supplier<V> made) {
        Key key = new Key(herd.id, herd.changeSeq, asOf);
        synchronized (kept) {
            V known = kept.get(key);
            if (known != null) {
                return known;
            }
            forgetOlder(key);
        }
        V value = made.get();
        synchronized (kept) {
            keep(key, value);
        }
        return value;
    }

    private void keep(Key key, V value) {
        if (weight.applyAsInt(value) > mostWeight) {
            return;
        }
        forgetOlder(key);
        kept.put(key, value);
        int all = kept.values().stream().mapToInt(weight).sum();
        var eldest = kept.values().iterator();
        while (kept.size() > most || all > mostWeight) {
            all -= weight.applyAsInt(eldest.next());
            eldest.remove();
        }
    }

    /** An older state of the herd will not be asked for again; gone before the new one is made, the two do not need room at once. */
    private void forgetOlder(Key key) {
        kept.keySet().removeIf(old -> old.herdId().equals(key.herdId()) && old.changeSeq() < key.changeSeq());
    }
}
