package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** Milk that did not go to the buyer. */
@Entity
@Table(name = "milk_use")
public class MilkUseRow extends DatedRecord {
    public String purpose;

    @Column(name = "milk_kg")
    public Double milkKg;

    public String note;
}
