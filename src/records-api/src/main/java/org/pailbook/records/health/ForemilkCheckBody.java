package org.pailbook.records.health;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.ForemilkCheckRow;

/** The foremilk of one quarter on the wire, in both directions. */
@Schema(
        name = "ForemilkCheck",
        description = "The foremilk of one quarter, looked at before a milking",
        requiredProperties = {"animal", "date", "milkingOfDay", "quarter", "finding"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-11-12\",\"milkingOfDay\":\"am\",\"quarter\":\"LF\",\"finding\":\"flakes\",\"udder\":\"hard\",\"action\":\"withheld\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ForemilkCheckBody(
        AnimalIdentifier animal,

        @Schema(description = "Day in the herd's zone") LocalDate date,

        @Schema(
                description = "Before which milking of the day",
                enumeration = {"am", "pm", "third"})
        String milkingOfDay,

        @Schema(
                description = "Left front, right front, left rear, right rear",
                enumeration = {"LF", "RF", "LR", "RR"})
        String quarter,

        @Schema(
                description = "What the foremilk looked like",
                enumeration = {"normal", "flakes", "watery", "blood", "serous", "noMilk"})
        String finding,

        @Schema(
                description = "What the quarter felt like",
                enumeration = {"normal", "hard", "hot", "painful"})
        String udder,

        @Schema(description = "Whether the cow herself looked ill")
        Boolean cowIll,

        @Schema(
                description = "What was done",
                enumeration = {"none", "withheld", "sampled", "veterinarianCalled"})
        String action,

        @Schema(description = "Who looked") String checkedBy,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static ForemilkCheckBody of(ForemilkCheckRow row, AnimalIdentifier animal) {
        return new ForemilkCheckBody(
                animal,
                row.date,
                row.milkingOfDay,
                row.quarter,
                row.finding,
                row.udder,
                row.cowIll,
                row.action,
                row.checkedBy,
                row.note,
                row.source,
                row.sourceId);
    }
}
