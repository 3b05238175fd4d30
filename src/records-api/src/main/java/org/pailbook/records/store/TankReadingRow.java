package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;

/** What a tank held when it was read. */
@Entity
@Table(name = "tank_reading")
public class TankReadingRow extends DatedRecord implements Timed {
    @Column(name = "read_at")
    public Instant readAt;

    /** Minute of it, by which the record is known. */
    @Column(name = "read_at_minute")
    public String minute;

    public String tank;

    @Column(name = "milk_kg")
    public Double milkKg;

    @Column(name = "milk_litres")
    public Double milkLitres;

    @Column(name = "temperature_c")
    public Double temperatureC;

    public String note;

    @Override
    public Instant at() {
        return readAt;
    }

    @Override
    public void setAt(Instant at) {
        this.readAt = at;
        this.minute = at == null ? null : Timed.minute(at);
    }
}
