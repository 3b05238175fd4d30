package org.pailbook.records.entry;

import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.projection.DayExpectation;
import org.pailbook.records.store.AnimalIdentifier;

/**
 * One cow on the sheet.
 *
 * @param animalId ours
 * @param identifier by which she is shown
 * @param name empty text without one
 * @param expected what she is expected to give on the day by what was known the day before; empty if nothing can be said
 * @param values what is recorded of her on the day, each as it is kept
 */
public record SheetRow(
        String animalId,
        AnimalIdentifier identifier,
        String name,
        Optional<DayExpectation> expected,
        Map<SheetCell, Double> values) {}
