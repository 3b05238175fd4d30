package org.pailbook.records.calculate;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.wire.Fields;

/** One test day of a posted lactation. Absent means not measured. */
@Schema(
        name = "PostedTestDay",
        description = "24 hours of milk and its composition; absent means not measured",
        requiredProperties = "date")
record PostedTestDay(
        LocalDate date,

        @Schema(description = "Milk of 24 hours, kg", minimum = "0")
        Double milkKg,

        @Schema(description = "Fat, percent by mass", minimum = "0")
        Double fatPct,

        @Schema(description = "Protein, percent by mass", minimum = "0")
        Double proteinPct,

        @Schema(description = "Lactose, percent by mass", minimum = "0")
        Double lactosePct,

        @Schema(description = "Somatic cells, thousand per mL", minimum = "0")
        Double sccThousandPerMl) {

    static PostedTestDay read(Fields fields) {
        PostedTestDay test = new PostedTestDay(
                fields.requiredDate("date"),
                fields.measure("milkKg"),
                fields.measure("fatPct"),
                fields.measure("proteinPct"),
                fields.measure("lactosePct"),
                fields.measure("sccThousandPerMl"));
        fields.finish();
        return test;
    }

    TestDay toLibrary() {
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
