package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.pailbook.lactation.event.Departure;

/** The animal left the herd. */
@Entity
@Table(name = "departure")
public class DepartureRow extends AnimalEvent {
    public String kind;
    public String reason;
    public String note;

    /** Day on which she came back; null while she is away. */
    @Column(name = "returned_on")
    public LocalDate returnedOn;

    boolean isOpen(LocalDate asOf) {
        return returnedOn == null || returnedOn.isAfter(asOf);
    }

    Departure toLibrary() {
        return new Departure(date);
    }
}
