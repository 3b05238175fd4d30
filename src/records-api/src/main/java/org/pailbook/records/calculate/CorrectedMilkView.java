package org.pailbook.records.calculate;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.wire.FigureView;

/**
 * Corrected milk, for one milk or for rows.
 *
 * @param formula with the composition at which it gives back the milk put in
 */
@Schema(name = "CorrectedMilk", description = "Corrected milk and the formula it was made by")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CorrectedMilkView(
        MethodView formula,
        String computedAt,
        @Schema(description = "For one milk, kg") FigureView corrected,

        @Schema(description = "For rows, in their order, kg")
        List<FigureView> rows) {}
