package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.MappedSuperclass;
import java.time.LocalDate;

/** A record about one animal on one day of the farm's calendar; animal and day are its natural key. */
@MappedSuperclass
public abstract class AnimalEvent extends StoredRecord {
    @Column(name = "animal_id")
    public String animalId;

    @Column(name = "event_date")
    public LocalDate date;
}
