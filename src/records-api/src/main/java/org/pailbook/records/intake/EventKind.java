package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.hibernate.StatelessSession;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.SameDays;
import org.pailbook.records.wire.FindingView;

/** A kind of record about one animal on one day: animal, day and what the kind adds are its natural key. */
public abstract class EventKind<E extends AnimalEvent> extends DatedKind<E> {
    /** Natural key. */
    private record AnimalAndDay(String animalId, LocalDate date, Object besides) {}

    /** Checks what is particular to the kind; animal and day are known to be there and the common checks are done. */
    protected abstract void checkDetails(Posted<E> posted, E replaced, Surroundings surroundings);

    /** Whether only a female animal can have such a record. */
    protected boolean isOfFemales() {
        return true;
    }

    @Override
    protected final List<Column> firstColumns() {
        return List.of(Column.text("animal_scheme", "animal", "scheme"), Column.text("animal_id", "animal", "id"));
    }

    @Override
    protected final void writeFirst(E record, ObjectNode content) {
        content.put(ANIMAL_ID, record.animalId);
    }

    @Override
    protected final boolean namesAnimal() {
        return true;
    }

    @Override
    protected final void assignAnimal(E record, String animalId) {
        record.animalId = animalId;
    }

    @Override
    protected final List<?> naturalKeys(E record) {
        return record.animalId == null || record.date == null
                ? List.of()
                : List.of(new AnimalAndDay(record.animalId, record.date, keyBesides(record)));
    }

    @Override
    protected final List<E> findByNaturalKeys(StatelessSession session, HerdRow herd, List<E> posted) {
        return SameDays.find(session, entity(), herd, posted);
    }

    /** Refuses a day after the animal left. */
    protected final void checkPresent(Posted<E> posted, Surroundings surroundings) {
        E record = posted.record();
        surroundings
                .departureBefore(record.animalId, record.date)
                .ifPresent(left -> posted.add(FindingView.error(
                                "after-departure", posted.pointer(dayMember()), "lies after the animal left the herd")
                        .seen(record.date.toString())
                        .expecting("at most " + left + "; if she came back, say so in her departure")));
    }

    /** Notes the day of her lactation, or warns that there is none. @param effect what follows if there is none */
    protected final OptionalInt noteLactationDay(Posted<E> posted, Surroundings surroundings, String effect) {
        E record = posted.record();
        LocalDate calved =
                surroundings.calvingOnOrBefore(record.animalId, record.date).orElse(null);
        if (calved == null) {
            posted.add(FindingView.warning(
                    "no-calving-before",
                    posted.pointer(dayMember()),
                    "no calving on or before this day is recorded; " + effect));
            return OptionalInt.empty();
        }
        int daysInMilk = DaysInMilk.on(calved, record.date);
        posted.inLactationDay(daysInMilk);
        return OptionalInt.of(daysInMilk);
    }

    @Override
    protected final void check(Posted<E> posted, E replaced, Surroundings surroundings) {
        checkDay(posted, surroundings);
        LocalDate date = posted.record().date;
        LocalDate born = surroundings.birthDate(posted.record().animalId);
        if (born != null && date.isBefore(born)) {
            posted.add(FindingView.error("before-birth", posted.pointer(dayMember()), "lies before the animal's birth")
                    .seen(date.toString())
                    .expecting("at least " + born));
        }
        if (isOfFemales() && surroundings.isMale(posted.record().animalId)) {
            posted.add(FindingView.error(
                            "male-animal",
                            posted.pointer("animal"),
                            "is recorded as male; correct its sex if that is wrong, or the animal named here")
                    .seen("male"));
        }
        checkDetails(posted, replaced, surroundings);
    }
}
