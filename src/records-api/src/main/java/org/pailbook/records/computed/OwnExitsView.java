package org.pailbook.records.computed;

import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What the herd's own unplanned exits of a parity say; 5 stands for later ones too. */
@Schema(
        name = "OwnExits",
        description =
                "Cows that died, were put down or went for their health (ours; recorded reasons do not part exits well)")
public record OwnExitsView(
        int parity,
        int exits,

        @Schema(description = "Months cows of the parity were there in the year, dry months among them")
        double cowMonths,

        @Schema(description = "How far they are believed against the reference: n / (n + 60) cow-months, ours")
        double weightPct,

        @Schema(description = "What came of it for months from the third on, and was computed with")
        double unplannedExitPctPerMonth) {}
