package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;

/** A treatment, with the withholding days that were entered. */
@Entity
@Table(name = "treatment")
public class TreatmentRow extends AnimalEvent {
    @Column(name = "product_name")
    public String productName;

    public String diagnosis;

    public String dose;

    public String route;

    public String batch;

    public String prescriber;

    @Column(name = "ended_on")
    public LocalDate endedOn;

    @Column(name = "milk_withheld_until")
    public LocalDate milkWithheldUntil;

    @Column(name = "meat_withheld_until")
    public LocalDate meatWithheldUntil;

    public String note;
}
