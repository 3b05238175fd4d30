package org.pailbook.records.milking;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.MilkingRow;

/** One milking of one cow on the wire, in both directions. */
@Schema(
        name = "Milking",
        description = "One milking of one cow, weighed",
        requiredProperties = {"animal", "startedAt", "milkingOfDay", "milkKg"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"startedAt\":\"2025-11-12T06:30:00-01:00\",\"milkingOfDay\":\"am\",\"milkKg\":14.2}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MilkingBody(
        AnimalIdentifier animal,

        @Schema(
                description = "When it began, with offset; sent in UTC. Its day is that of the herd's zone",
                examples = "2025-11-12T06:30:00Z")
        String startedAt,

        @Schema(
                description = "Which milking of the day",
                enumeration = {"am", "pm", "third"})
        String milkingOfDay,

        @Schema(description = "Milk of this milking, kg") Double milkKg,

        @Schema(description = "How many milkings there were that day; 2 if not told, 3 with a third")
        Integer milkingsPerDay,

        @Schema(description = "Hours since the milking before")
        Double hoursSincePrevious,

        @Schema(description = "How long it took, minutes") Double durationMinutes,

        @Schema(description = "Fat, percent by mass") Double fatPct,

        @Schema(description = "Protein, percent by mass") Double proteinPct,

        @Schema(description = "Lactose, percent by mass") Double lactosePct,

        @Schema(description = "Somatic cells, thousand per mL")
        Double sccThousandPerMl,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static MilkingBody of(MilkingRow row, AnimalIdentifier animal) {
        return new MilkingBody(
                animal,
                row.startedAt.toString(),
                row.milkingOfDay,
                row.milkKg,
                row.milkingsPerDay,
                row.hoursSincePrevious,
                row.durationMinutes,
                row.fatPct,
                row.proteinPct,
                row.lactosePct,
                row.sccThousandPerMl,
                row.source,
                row.sourceId);
    }
}
