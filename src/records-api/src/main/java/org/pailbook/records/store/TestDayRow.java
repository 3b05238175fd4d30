package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.TestDay;

/** A test day: milk of 24 hours and its composition, as far as they were measured. */
@Entity
@Table(name = "test_day")
public class TestDayRow extends AnimalEvent {
    @Column(name = "milk_kg")
    public Double milkKg;

    @Column(name = "fat_pct")
    public Double fatPct;

    @Column(name = "protein_pct")
    public Double proteinPct;

    @Column(name = "lactose_pct")
    public Double lactosePct;

    @Column(name = "scc_thousand_per_ml")
    public Double sccThousandPerMl;

    /** The same in the library's type. */
    public TestDay toLibrary() {
        return new TestDay(
                date,
                optional(milkKg),
                optional(fatPct),
                optional(proteinPct),
                optional(lactosePct),
                optional(sccThousandPerMl));
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
