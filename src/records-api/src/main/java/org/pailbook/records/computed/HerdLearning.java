package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/**
 * What each herd's history tells its projections, worked out once for a state of the herd and a day.
 *
 * <p>Kept under the number of the herd's last change, so any write, by this process or another one on the same database, is seen at
 * the next request. The least lately used herds are dropped beyond a number of lactations; a herd beyond it alone is learned for each request.
 */
@ApplicationScoped
public class HerdLearning {
    /** Some 4 kB each by count of their fields, so about 80 MB at most. Ours. */
    private static final int MOST_LACTATIONS = 20_000;

    private static final int MOST_HERDS = 64;

    private final CowRecords records;
    private final LinkedHashMap<Key, HerdKnowledge> known = new LinkedHashMap<>(16, 0.75f, true);

    private record Key(String herdId, long changeSeq, LocalDate asOf) {}

    @Inject
    HerdLearning(CowRecords records) {
        this.records = records;
    }

    /**
     * What is known of a herd by what happened up to a day and was known at the last change its row names; its records are read if they must
     * be.
     */
    public HerdKnowledge of(HerdRow herd, LocalDate asOf) {
        return of(
                herd,
                asOf,
                () -> records.ofHerd(herd, asOf).stream()
                        .map(record -> record.onDay(asOf))
                        .toList());
    }

    /** The same for a herd whose cows have been read already. */
    public List<CowOnDay> teach(HerdRow herd, LocalDate asOf, List<CowOnDay> cows) {
        HerdKnowledge knowledge = of(herd, asOf, () -> cows);
        return cows.stream().map(cow -> cow.withHerd(knowledge)).toList();
    }

    private HerdKnowledge of(HerdRow herd, LocalDate asOf, Supplier<List<CowOnDay>> cows) {
        Key key = new Key(herd.id, herd.changeSeq, asOf);
        return kept(key).orElseGet(() -> keep(key, HerdKnowledge.ofCows(cows.get(), asOf)));
    }

    private synchronized Optional<HerdKnowledge> kept(Key key) {
        return Optional.ofNullable(known.get(key));
    }

    private synchronized HerdKnowledge keep(Key key, HerdKnowledge learned) {
        if (learned.lactations() <= MOST_LACTATIONS) {
            // an older state of the herd will not be asked for again
            known.keySet().removeIf(old -> old.herdId().equals(key.herdId()) && old.changeSeq() < key.changeSeq());
            known.put(key, learned);
            int lactations =
                    known.values().stream().mapToInt(HerdKnowledge::lactations).sum();
            var eldest = known.entrySet().iterator();
            while (known.size() > MOST_HERDS || lactations > MOST_LACTATIONS) {
                lactations -= eldest.next().getValue().lactations();
                eldest.remove();
            }
        }
        return learned;
    }
}
