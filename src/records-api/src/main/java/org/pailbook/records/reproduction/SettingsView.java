package org.pailbook.records.reproduction;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.breeding.BreedingSettings;

/** The settings an answer was made with. */
@Schema(name = "BreedingSettings")
record SettingsView(
        int waitingDays,

        @Schema(description = "No waiting period was given; a usual one stood in")
        boolean isWaitingAssumed,

        int checkDays,
        int dryDays) {
    static SettingsView of(BreedingSettings settings) {
        return new SettingsView(
                settings.waitingDays(), settings.ownWaitingDays().isEmpty(), settings.checkDays(), settings.dryDays());
    }
}
