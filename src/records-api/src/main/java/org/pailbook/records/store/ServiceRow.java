package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A service: insemination, natural service or implantation. */
@Entity
@Table(name = "service")
public class ServiceRow extends AnimalEvent {
    @Column(name = "service_of_day")
    public Integer serviceOfDay;

    public String method;

    public String sire;

    public String note;
}
