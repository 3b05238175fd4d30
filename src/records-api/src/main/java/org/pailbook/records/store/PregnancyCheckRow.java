package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A pregnancy check. */
@Entity
@Table(name = "pregnancy_check")
public class PregnancyCheckRow extends AnimalEvent {
    public String result;

    public String method;

    public String note;
}
