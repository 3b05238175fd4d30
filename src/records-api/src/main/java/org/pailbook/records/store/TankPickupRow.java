package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;

/** Milk picked up from a tank. */
@Entity
@Table(name = "tank_pickup")
public class TankPickupRow extends DatedRecord implements Timed {
    @Column(name = "picked_up_at")
    public Instant pickedUpAt;

    /** Minute of it, by which the record is known. */
    @Column(name = "picked_up_at_minute")
    public String minute;

    public String tank;

    @Column(name = "milk_kg")
    public Double milkKg;

    @Column(name = "milk_litres")
    public Double milkLitres;

    @Column(name = "fat_pct")
    public Double fatPct;

    @Column(name = "protein_pct")
    public Double proteinPct;

    @Column(name = "lactose_pct")
    public Double lactosePct;

    @Column(name = "scc_thousand_per_ml")
    public Double sccThousandPerMl;

    @Column(name = "bacteria_thousand_per_ml")
    public Double bacteriaThousandPerMl;

    @Column(name = "temperature_c")
    public Double temperatureC;

    public String note;

    @Override
    public Instant at() {
        return pickedUpAt;
    }

    @Override
    public void setAt(Instant at) {
        this.pickedUpAt = at;
        this.minute = at == null ? null : Timed.minute(at);
    }
}
