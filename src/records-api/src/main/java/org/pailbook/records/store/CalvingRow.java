package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.OptionalInt;
import org.pailbook.lactation.event.Calving;

/** A calving. */
@Entity
@Table(name = "calving")
public class CalvingRow extends AnimalEvent {
    /** Number of calvings including this one, if it was recorded. */
    public Integer parity;

    /** 1 easy to 5 surgery, in the order of the ICAR data exchange list. */
    public Integer ease;

    /** The calves as a JSON array, in the shape of the wire; null if none is recorded. */
    public String calves;

    Calving toLibrary() {
        return new Calving(date, parity == null ? OptionalInt.empty() : OptionalInt.of(parity));
    }
}
