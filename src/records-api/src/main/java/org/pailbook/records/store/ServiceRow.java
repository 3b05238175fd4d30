package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.pailbook.lactation.event.Insemination;

/** A service: insemination, natural service or implantation. */
@Entity
@Table(name = "service")
public class ServiceRow extends AnimalEvent {
    @Column(name = "service_of_day")
    public Integer serviceOfDay;

    public String method;

    public String sire;

    public String note;

    /** The breed of the bull is not recorded. */
    Insemination toLibrary() {
        return Insemination.on(date);
    }
}
