package org.pailbook.records.computed;

import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What the herd's own cycles of a parity say; 5 stands for later ones too. */
@Schema(name = "OwnPregnancies")
public record OwnPregnanciesView(
        int parity,
        int pregnancies,

        @Schema(description = "21-day cycles of cows that could have conceived")
        int eligibleCycles,

        @Schema(description = "How far they are believed against the reference: n / (n + 60), ours")
        double weightPct,

        @Schema(description = "What came of it, and was computed with")
        double pregnancyRate21DayPct) {}
