package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;

/** One milking of one cow, weighed. */
@Entity
@Table(name = "milking")
public class MilkingRow extends AnimalEvent implements Timed {
    @Column(name = "started_at")
    public Instant startedAt;

    /** Minute of it, by which the record is known. */
    @Column(name = "started_at_minute")
    public String minute;

    @Column(name = "milking_of_day")
    public String milkingOfDay;

    @Column(name = "milk_kg")
    public Double milkKg;

    @Column(name = "milkings_per_day")
    public Integer milkingsPerDay;

    @Column(name = "hours_since_previous")
    public Double hoursSincePrevious;

    @Column(name = "duration_minutes")
    public Double durationMinutes;

    @Column(name = "fat_pct")
    public Double fatPct;

    @Column(name = "protein_pct")
    public Double proteinPct;

    @Column(name = "lactose_pct")
    public Double lactosePct;

    @Column(name = "scc_thousand_per_ml")
    public Double sccThousandPerMl;

    @Override
    public Instant at() {
        return startedAt;
    }

    @Override
    public void setAt(Instant at) {
        this.startedAt = at;
        this.minute = at == null ? null : Timed.minute(at);
    }
}
