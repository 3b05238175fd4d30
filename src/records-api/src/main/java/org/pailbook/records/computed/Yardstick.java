package org.pailbook.records.computed;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.finding.Finding;

/**
 * What the cows of a herd are held against on a day: no cow is in it, so it is small and may be kept.
 *
 * @param groupMeanKg mean projected 305-day milk of first lactations (true) and of later ones, where there is one
 * @param money empty if there is no value in money; then {@code why} says what is wrong with the prices
 * @param about what stands with every figure
 */
public record Yardstick(
        Map<Boolean, Double> groupMeanKg,
        Optional<ByMoney> money,
        Optional<Finding> why,
        UsedSettingsView used,
        List<Finding> about) {

    /** @param keepOrReplace made when first asked for: it solves the table */
    public record ByMoney(
            String currency,
            Supplier<KeepOrReplace> keepOrReplace,
            List<AssumedView> assumed,
            List<OwnPregnanciesView> ownPregnancies,
            List<OwnExitsView> ownExits) {}
}
