package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/** The animals of a herd as they were on a day, each computed by what the herd teaches. */
@ApplicationScoped
public class HerdCows {
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
        HerdKnowledge knowledge = learning.of(herd, day);
        records.inParts(herd, day, (animals, some) -> {
            for (int i = 0; i < animals.size(); i++) {
                if (some.get(i).isBornBy(day)) {
                    each.accept(known(animals.get(i), some.get(i), day, knowledge));
                }
            }
        });
    }

    private static KnownCow known(AnimalRow animal, CowRecord record, LocalDate day, HerdKnowledge knowledge) {
        return new KnownCow(animal, record, record.onDay(day).withHerd(knowledge));
    }
}
