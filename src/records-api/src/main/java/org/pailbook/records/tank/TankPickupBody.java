package org.pailbook.records.tank;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.TankPickupRow;

/** Milk picked up from a tank on the wire, in both directions. */
@Schema(
        name = "TankPickup",
        description = "Milk picked up from a tank",
        requiredProperties = {"pickedUpAt", "tank"},
        examples =
                "{\"tank\":\"main\",\"pickedUpAt\":\"2025-11-12T10:40:00-01:00\",\"milkKg\":2410,\"fatPct\":4.11,\"proteinPct\":3.42,\"sccThousandPerMl\":190,\"bacteriaThousandPerMl\":12}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TankPickupBody(
        @Schema(
                description = "When the milk was picked up, with offset; sent in UTC",
                examples = "2025-11-12T06:30:00Z")
        String pickedUpAt,

        @Schema(description = "Which tank") String tank,

        @Schema(description = "Milk picked up, kg") Double milkKg,

        @Schema(description = "Milk picked up, litres; kept as read, nothing is converted")
        Double milkLitres,

        @Schema(description = "Fat, percent by mass") Double fatPct,

        @Schema(description = "Protein, percent by mass") Double proteinPct,

        @Schema(description = "Lactose, percent by mass") Double lactosePct,

        @Schema(description = "Somatic cells, thousand per mL")
        Double sccThousandPerMl,

        @Schema(description = "Bacteria, thousand per mL") Double bacteriaThousandPerMl,

        @Schema(description = "Degrees Celsius") Double temperatureC,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static TankPickupBody of(TankPickupRow row) {
        return new TankPickupBody(
                row.pickedUpAt.toString(),
                row.tank,
                row.milkKg,
                row.milkLitres,
                row.fatPct,
                row.proteinPct,
                row.lactosePct,
                row.sccThousandPerMl,
                row.bacteriaThousandPerMl,
                row.temperatureC,
                row.note,
                row.source,
                row.sourceId);
    }
}
