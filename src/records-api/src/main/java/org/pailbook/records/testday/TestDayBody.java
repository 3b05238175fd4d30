package org.pailbook.records.testday;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.TestDayRow;

/** A test day on the wire, in both directions. Absent means not measured. */
@Schema(
        name = "TestDay",
        description = "24 hours of one cow's milk and its composition; absent means not measured",
        requiredProperties = {"animal", "date"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-11-12\",\"milkKg\":27.4,\"fatPct\":4.12,\"proteinPct\":3.41,\"sccThousandPerMl\":84}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TestDayBody(
        AnimalIdentifier animal,
        @Schema(description = "Day in the herd's zone") LocalDate date,
        @Schema(description = "Milk of 24 hours, kg") Double milkKg,
        @Schema(description = "Fat, percent by mass") Double fatPct,
        @Schema(description = "Protein, percent by mass") Double proteinPct,
        @Schema(description = "Lactose, percent by mass") Double lactosePct,

        @Schema(description = "Somatic cells, thousand per mL")
        Double sccThousandPerMl,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static TestDayBody of(TestDayRow row, AnimalIdentifier animal) {
        return new TestDayBody(
                animal,
                row.date,
                row.milkKg,
                row.fatPct,
                row.proteinPct,
                row.lactosePct,
                row.sccThousandPerMl,
                row.source,
                row.sourceId);
    }
}
