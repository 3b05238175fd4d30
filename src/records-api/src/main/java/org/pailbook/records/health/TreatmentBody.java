package org.pailbook.records.health;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.TreatmentRow;

/** A treatment on the wire, in both directions. */
@Schema(
        name = "Treatment",
        description = "A treatment, with the withholding days that were entered",
        requiredProperties = {"animal", "startedOn", "productName"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"startedOn\":\"2025-11-12\",\"productName\":\"as on the label\",\"diagnosis\":\"mastitis\",\"endedOn\":\"2025-11-14\",\"milkWithheldUntil\":\"2025-11-19\",\"meatWithheldUntil\":\"2025-11-28\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TreatmentBody(
        AnimalIdentifier animal,

        @Schema(description = "First day of treatment, in the herd's zone")
        LocalDate startedOn,

        @Schema(description = "Product, as on its label") String productName,

        @Schema(description = "What was treated, in your words or your veterinarian's")
        String diagnosis,

        @Schema(description = "As given") String dose,

        @Schema(description = "How it was given") String route,

        @Schema(description = "Batch of the product") String batch,

        @Schema(description = "Who prescribed it") String prescriber,

        @Schema(description = "Last day of treatment") LocalDate endedOn,

        @Schema(description = "Last day on which her milk is withheld, as entered; never computed")
        LocalDate milkWithheldUntil,

        @Schema(description = "Last day on which her meat is withheld, as entered; never computed")
        LocalDate meatWithheldUntil,

        @Schema(description = "Your own words") String note,

        @Schema(description = "What to keep in mind; in answers, and not read when sent", readOnly = true)
        String caution,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static final String CAUTION =
            "Withholding days are those you entered, as read from the label or told by your veterinarian; none is computed here."
                    + " Ask your veterinarian before milk or meat is used.";

    static TreatmentBody of(TreatmentRow row, AnimalIdentifier animal) {
        return new TreatmentBody(
                animal,
                row.date,
                row.productName,
                row.diagnosis,
                row.dose,
                row.route,
                row.batch,
                row.prescriber,
                row.endedOn,
                row.milkWithheldUntil,
                row.meatWithheldUntil,
                row.note,
                CAUTION,
                row.source,
                row.sourceId);
    }
}
