package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/** The animals of a herd as they were on a day, each computed by what the herd teaches. */
@ApplicationScoped
public class HerdCows {
    /** So many rows are held before they are handed over. Ours. */
    private static final int MADE_AT_ONCE = 500;

    private final CowRecords records;
    private final HerdLearning learning;

    @Inject
    HerdCows(CowRecords records, HerdLearning learning) {
        this.records = records;
        this.learning = learning;
    }

    /** One animal. */
    public KnownCow one(HerdRow herd, AnimalRow animal, LocalDate day) {
        return known(animal, records.ofAnimal(herd, animal, day), day, learning.of(herd, day));
    }

    /** Every animal born by then, in the order in which they were first posted. */
    public List<KnownCow> all(HerdRow herd, LocalDate day) {
        List<KnownCow> all = new ArrayList<>();
        each(herd, day, all::add);
        return all;
    }

    /** The same one by one, so that a herd of any size can be gone through. */
    public void each(HerdRow herd, LocalDate day, Consumer<KnownCow> each) {
        each(herd, day, Optional::of, each);
    }

    /**
     * What is made of each animal, handed over in the same order.
     *
     * @param made asked on all processors at once, so it must change nothing
     */
    public <R> void each(HerdRow herd, LocalDate day, Function<KnownCow, Optional<R>> made, Consumer<R> each) {
        HerdKnowledge knowledge = learning.of(herd, day);
        records.inParts(herd, day, (animals, some) -> {
            for (int from = 0; from < animals.size(); from += MADE_AT_ONCE) {
                IntStream.range(from, Math.min(animals.size(), from + MADE_AT_ONCE))
                        .parallel()
                        .filter(i -> some.get(i).isBornBy(day))
                        .mapToObj(i -> made.apply(known(animals.get(i), some.get(i), day, knowledge)))
                        .flatMap(Optional::stream)
                        .toList()
                        .forEach(each);
            }
        });
    }

    private static KnownCow known(AnimalRow animal, CowRecord record, LocalDate day, HerdKnowledge knowledge) {
        return new KnownCow(animal, record, record.onDay(day).withHerd(knowledge));
    }
}
