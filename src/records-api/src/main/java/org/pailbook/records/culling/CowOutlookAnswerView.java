package org.pailbook.records.culling;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.CowOutlookView;
import org.pailbook.records.computed.OwnExitsView;
import org.pailbook.records.computed.OwnPregnanciesView;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView.WarningView;

/** What keeping one cow is worth, explained. */
@Schema(
        name = "CowOutlookAnswer",
        description =
                "What keeping one cow is worth, every figure explained. To think with, never an order; to be shown"
                        + " with its caution")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CowOutlookAnswerView(
        String herd,
        AnimalIdentifier animal,
        String name,
        String asOf,
        String knownAt,
        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(description = "To be shown with the figures")
        String caution,

        @Schema(description = "ISO 4217, of every sum of money here")
        String currency,

        UsedSettingsView usedSettings,

        @Schema(description = "Absent without prices, or if she is neither in milk nor dry")
        CowOutlookView outlook,

        @Schema(description = "What is not recorded; values of an invented reference set stood in")
        List<AssumedView> assumed,

        @Schema(description = "The herd's own 21-day pregnancies of the year, moved into the reference")
        List<OwnPregnanciesView> ownPregnancies,

        @Schema(
                description =
                        "The herd's own unplanned exits of the year, moved into the reference; empty if no departure of it is recorded")
        List<OwnExitsView> ownExits,

        List<WarningView> warnings) {}
