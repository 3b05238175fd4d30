package org.pailbook.records.store;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;

/**
 * What was worked out of a herd, kept under the number of its last change and a day: any write, by this process or another one on the same
 * database, is seen at the next request. What was kept of an older state of the herd goes then, and the least lately used beyond a number or
 * a weight.
 *
 * <p>Who asks for what somebody is just working out waits for it. Of several large ones only {@value #LARGE_AT_ONCE} are worked out at a time: eight readers of
 * eight days of a herd of ten thousand would otherwise need the memory eight times.
 */
public final class KeptByState<V> {
    private static final int LARGE_AT_ONCE = 2;
    /** What weighs more than this part of all that may be kept is large. */
    private static final int LARGE_PART = 20;

    private static final int MOST_HERDS_KNOWN = 10_000;

    private final int most;
    private final int mostWeight;
    private final int largeFrom;
    private final ToIntFunction<V> weight;
    private final ConcurrentMap<Key, Making<V>> making = new ConcurrentHashMap<>();
    /** of each herd when it was last worked out; one not seen yet counts as large */
    private final ConcurrentMap<String, Integer> lastWeight = new ConcurrentHashMap<>();

    private final Semaphore large = new Semaphore(LARGE_AT_ONCE, true);
    private final LinkedHashMap<Key, V> kept = new LinkedHashMap<>(16, 0.75f, true);

    private record Key(String herdId, long changeSeq, LocalDate asOf) {}

    /**
     * Entries that weigh little and take the whole herd to make.
     *
     * @param most entries kept
     */
    public KeptByState(int most) {
        this(most, most, 1, one -> 1);
    }

    /**
     * @param most entries kept
     * @param mostWeight of all of them together; one that weighs more alone is not kept
     */
    public KeptByState(int most, int mostWeight, ToIntFunction<V> weight) {
        this(most, mostWeight, mostWeight / LARGE_PART, weight);
    }

    private KeptByState(int most, int mostWeight, int largeFrom, ToIntFunction<V> weight) {
        this.most = most;
        this.mostWeight = mostWeight;
        this.largeFrom = largeFrom;
        this.weight = weight;
    }

    /** Worked out if it is not there. */
    public V of(HerdRow herd, LocalDate asOf, Supplier<V> made) {
        Key key = new Key(herd.id, herd.changeSeq, asOf);
        while (true) {
            V known = find(key);
            if (known != null) {
                return known;
            }
            Making<V> mine = new Making<>();
            Making<V> others = making.putIfAbsent(key, mine);
            if (others == null) {
                try {
                    return make(key, mine, made);
                } finally {
                    making.remove(key, mine);
                    mine.ended.countDown();
                }
            }
            if (others.by == mine.by) {
                return made.get();
            }
            V value = others.await();
            if (value != null) {
                return value;
            }
        }
    }

    private V find(Key key) {
        synchronized (kept) {
            V known = kept.get(key);
            if (known == null) {
                forgetOlder(key);
            }
            return known;
        }
    }

    private V make(Key key, Making<V> mine, Supplier<V> made) {
        V known = find(key); // somebody may have ended between the look and the turn
        if (known != null) {
            mine.value = known;
            return known;
        }
        boolean isLarge = lastWeight.getOrDefault(key.herdId(), largeFrom) >= largeFrom;
        if (isLarge) {
            large.acquireUninterruptibly();
        }
        try {
            V value = made.get();
            synchronized (kept) {
                keep(key, value);
            }
            mine.value = value;
            return value;
        } finally {
            if (isLarge) {
                large.release();
            }
        }
    }

    /** Something being worked out by one thread and waited for by others. */
    private static final class Making<V> {
        final Thread by = Thread.currentThread();
        final CountDownLatch ended = new CountDownLatch(1);
        volatile V value;

        /** Null if it failed: then whoever waited tries it, and is told what is wrong. */
        V await() {
            boolean isInterrupted = false;
            while (true) {
                try {
                    ended.await();
                    break;
                } catch (InterruptedException stopped) {
                    isInterrupted = true;
                }
            }
            if (isInterrupted) {
                Thread.currentThread().interrupt();
            }
            return value;
        }
    }

    private void keep(Key key, V value) {
        if (lastWeight.size() >= MOST_HERDS_KNOWN) {
            lastWeight.clear();
        }
        int own = weight.applyAsInt(value);
        lastWeight.put(key.herdId(), own);
        if (own > mostWeight) {
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
