package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KeptByState;

/**
 * What each herd's history tells its projections, worked out once for a state of the herd and a day.
 *
 * <p>Kept under the number of the herd's last change, so any write, by this process or another one on the same database, is seen at
 * the next request. The least lately used herds are dropped beyond a number of lactations; a herd beyond it alone is learned for each request.
 */
@ApplicationScoped
public class HerdLearning {
    /** Some 7 kB each (measured), so about 140 MB at most. Ours. */
    private static final int MOST_LACTATIONS = 20_000;

    private static final int MOST_HERDS = 64;

    private final CowRecords records;
    private final KeptByState<HerdKnowledge> known =
            new KeptByState<>(MOST_HERDS, MOST_LACTATIONS, HerdKnowledge::lactations);

    @Inject
    HerdLearning(CowRecords records) {
        this.records = records;
    }

    /**
     * What is known of a herd by what happened up to a day and was known at the last change its row names; its records are read if they must
     * be.
     */
    public HerdKnowledge of(HerdRow herd, LocalDate asOf) {
        return known.of(
                herd,
                asOf,
                () -> HerdKnowledge.ofCows(
                        records.ofHerd(herd, asOf).parallelStream()
                                .map(record -> record.onDay(asOf))
                                .toList(),
                        asOf));
    }

    /** The same for a herd whose cows have been read already. */
    public List<CowOnDay> teach(HerdRow herd, LocalDate asOf, List<CowOnDay> cows) {
        HerdKnowledge knowledge = known.of(herd, asOf, () -> HerdKnowledge.ofCows(cows, asOf));
        return cows.stream().map(cow -> cow.withHerd(knowledge)).toList();
    }
}
