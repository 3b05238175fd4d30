package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** Whether a cow is to be served from a day on, by the farm's choice. */
@Entity
@Table(name = "breeding_decision")
public class BreedingDecisionRow extends AnimalEvent {
    public String decision;

    public String reason;

    public String note;
}
