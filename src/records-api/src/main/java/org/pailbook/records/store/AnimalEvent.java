package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.MappedSuperclass;

/** A record about one animal on one day of the farm's calendar. */
@MappedSuperclass
public abstract class AnimalEvent extends DatedRecord {
    @Column(name = "animal_id")
    public String animalId;
}
