package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.lactation.udderhealth.TankSample;
import org.pailbook.lactation.udderhealth.TankStanding;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.TankPickupRow;

/** Cell counts of a herd's tank, from what was sampled at pickups. */
@ApplicationScoped
public class HerdTank {
    private final Events events;

    @Inject
    HerdTank(Events events) {
        this.events = events;
    }

    /** In order of day. */
    public List<TankSample> samples(HerdRow herd, LocalDate asOf) {
        return events.all(TankPickupRow.class, herd, null, asOf).stream()
                .filter(row -> row.sccThousandPerMl != null && row.sccThousandPerMl > 0)
                .map(row -> new TankSample(row.date, row.sccThousandPerMl))
                .toList();
    }

    /** Where the tank stands against a limit. */
    public TankStanding standing(HerdRow herd, TankLimit limit, LocalDate asOf) {
        return TankStanding.of(limit, samples(herd, asOf), asOf);
    }
}
