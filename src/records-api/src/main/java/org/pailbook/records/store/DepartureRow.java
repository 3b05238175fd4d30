package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.event.Departure;

/** The animal left the herd. */
@Entity
@Table(name = "departure")
public class DepartureRow extends AnimalEvent {
    private static final List<String> DEATHS = List.of("death", "cullOnFarm");

    public String kind;
    public String reason;
    public String note;

    /** Day on which she came back; null while she is away. */
    @Column(name = "returned_on")
    public LocalDate returnedOn;

    /** Whether she died or was put down. */
    public boolean isDeath() {
        return DEATHS.contains(kind);
    }

    boolean isOpen(LocalDate asOf) {
        return returnedOn == null || returnedOn.isAfter(asOf);
    }

    Departure toLibrary() {
        return new Departure(date);
    }
}
