package org.pailbook.records.computed;

import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.ParityGroup;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;

/**
 * A value nobody gave, and what stood in: from an invented reference set of realistic size, ours, nobody's herd.
 *
 * @param pointer where it could have been given
 * @param value in the unit of its name
 */
@Schema(name = "AssumedValue", description = "A value nobody gave; one of an invented reference set stood in")
public record AssumedView(
        @Schema(examples = "/prices/heiferCu") String pointer, double value) {
    private static final double PERCENT = 100;

    /** What of a parity's figures nothing is recorded of: weight, exits, pregnancy rate. */
    public static List<AssumedView> ofGroup(String at, ParityGroup group) {
        return List.of(
                new AssumedView(at + "/bodyWeightKg", group.bodyWeightKg()),
                new AssumedView(at + "/unplannedExitPctPerMonth", PERCENT * group.unplannedExitSharePerMonth()),
                new AssumedView(at + "/pregnancyRate21DayPct", PERCENT * group.pregnancyRate21DayShare()));
    }

    /** The finding that goes with every figure made from them; none if everything was given. */
    public static List<Finding> findings(List<AssumedView> assumed) {
        if (assumed.isEmpty()) {
            return List.of();
        }
        return List.of(Finding.of(FindingCode.REFERENCE_VALUE_USED)
                .withSeen(assumed.stream()
                        .map(one -> one.pointer().substring(1) + " " + one.value())
                        .collect(Collectors.joining(", "))));
    }
}
