package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.pailbook.lactation.event.DryOff;

/** A dry-off: the last day on which the cow was milked. */
@Entity
@Table(name = "dry_off")
public class DryOffRow extends AnimalEvent {
    DryOff toLibrary() {
        return new DryOff(date);
    }
}
