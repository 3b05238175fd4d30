package org.pailbook.records.tank;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.TankReadingRow;

/** What a tank held when it was read on the wire, in both directions. */
@Schema(
        name = "TankReading",
        description = "What a tank held when it was read",
        requiredProperties = {"readAt", "tank"},
        examples =
                "{\"tank\":\"main\",\"readAt\":\"2025-11-12T07:10:00-01:00\",\"milkLitres\":1240,\"temperatureC\":3.8}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TankReadingBody(
        @Schema(description = "When it was read, with offset; sent in UTC", examples = "2025-11-12T06:30:00Z")
        String readAt,

        @Schema(description = "Which tank") String tank,

        @Schema(description = "Milk in the tank, kg") Double milkKg,

        @Schema(description = "Milk in the tank, litres; kept as read, nothing is converted")
        Double milkLitres,

        @Schema(description = "Degrees Celsius") Double temperatureC,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static TankReadingBody of(TankReadingRow row) {
        return new TankReadingBody(
                row.readAt.toString(),
                row.tank,
                row.milkKg,
                row.milkLitres,
                row.temperatureC,
                row.note,
                row.source,
                row.sourceId);
    }
}
