package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.pailbook.lactation.event.Departure;

/** The animal left the herd. */
@Entity
@Table(name = "departure")
public class DepartureRow extends AnimalEvent {
    private static final List<String> DEATHS = List.of("death", "cullOnFarm");

    public String kind;
    public String reason;

    @Column(name = "second_reason")
    public String secondReason;

    @Column(name = "third_reason")
    public String thirdReason;

    public String note;

    /** Day on which she came back; null while she is away. */
    @Column(name = "returned_on")
    public LocalDate returnedOn;

    /** Whether she died or was put down. */
    public boolean isDeath() {
        return DEATHS.contains(kind);
    }

    /** As recorded, the first first; none if none was. */
    public List<String> reasons() {
        return Stream.of(reason, secondReason, thirdReason)
                .filter(Objects::nonNull)
                .toList();
    }

    boolean isOpen(LocalDate asOf) {
        return returnedOn == null || returnedOn.isAfter(asOf);
    }

    Departure toLibrary() {
        return new Departure(date);
    }
}
