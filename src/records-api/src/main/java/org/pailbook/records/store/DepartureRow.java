package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.pailbook.lactation.event.Departure;

/** The animal left the herd. */
@Entity
@Table(name = "departure")
public class DepartureRow extends AnimalEvent {
    public String kind;
    public String reason;
    public String note;

    Departure toLibrary() {
        return new Departure(date);
    }
}
