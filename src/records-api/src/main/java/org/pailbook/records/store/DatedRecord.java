package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.MappedSuperclass;
import java.time.LocalDate;

/** A record that belongs to one day of the farm's calendar; lists are in order of that day. */
@MappedSuperclass
public abstract class DatedRecord extends StoredRecord {
    @Column(name = "event_date")
    public LocalDate date;
}
