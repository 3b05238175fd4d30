package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
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

    /** Beginning of a query for what figures are made of; each row is one for {@link #of}. */
    static final String COMPUTED_WITH =
            "select animalId, id, date, milkKg, fatPct, proteinPct, lactosePct, sccThousandPerMl ";

    /** A row that has only what figures are made of, and is not kept by the database's session. */
    static TestDayRow of(Object[] computedWith) {
        TestDayRow row = new TestDayRow();
        row.animalId = (String) computedWith[0];
        row.id = (String) computedWith[1];
        row.date = (LocalDate) computedWith[2];
        row.milkKg = (Double) computedWith[3];
        row.fatPct = (Double) computedWith[4];
        row.proteinPct = (Double) computedWith[5];
        row.lactosePct = (Double) computedWith[6];
        row.sccThousandPerMl = (Double) computedWith[7];
        return row;
    }

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
