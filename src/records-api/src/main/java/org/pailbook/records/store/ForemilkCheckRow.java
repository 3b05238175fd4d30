package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** The foremilk of one quarter, looked at before a milking. */
@Entity
@Table(name = "foremilk_check")
public class ForemilkCheckRow extends AnimalEvent {
    @Column(name = "milking_of_day")
    public String milkingOfDay;

    public String quarter;

    public String finding;

    public String udder;

    @Column(name = "cow_ill")
    public Boolean cowIll;

    public String action;

    @Column(name = "checked_by")
    public String checkedBy;

    public String note;
}
