package org.pailbook.records.entry;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import org.pailbook.records.intake.Edit;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.intake.RecordAmendment;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.Grade;
import org.pailbook.records.wire.MergePatch;

/** Stores typed values in the one record they belong to, if that still says what the typist saw. */
@ApplicationScoped
class CellWriting {
    /** Whose values they are, and who typed them. */
    record Place(HerdRow herd, String writtenBy, String animalId) {}

    /**
     * The record they belong to.
     *
     * @param there as it was read; empty if there is none
     * @param cells that belong to it
     * @param begun fills what a new one has besides the animal and the values
     * @param valueOf what a record has in a cell; null for nothing
     * @param hasMore whether a record says more than the sheet shows, so that it is kept when all cells are emptied
     */
    record Target<E extends AnimalEvent>(
            RecordKind<E> kind,
            Optional<E> there,
            Set<SheetCell> cells,
            Consumer<ObjectNode> begun,
            BiFunction<E, SheetCell, Double> valueOf,
            Predicate<E> hasMore) {
        Optional<Double> value(SheetCell cell) {
            return there.map(row -> valueOf.apply(row, cell));
        }
    }

    private final RecordIntake intake;
    private final RecordAmendment amendment;

    @Inject
    CellWriting(RecordIntake intake, RecordAmendment amendment) {
        this.intake = intake;
        this.amendment = amendment;
    }

    <E extends AnimalEvent> Map<SheetCell, CellOutcome> write(
            Place place, Target<E> target, Map<SheetCell, TypedCell> typed) {
        Map<SheetCell, CellOutcome> outcomes = new EnumMap<>(SheetCell.class);
        Map<SheetCell, Optional<Double>> changes = new EnumMap<>(SheetCell.class);
        typed.forEach((cell, value) -> {
            Optional<Double> there = target.value(cell);
            if (there.equals(value.value())) {
                outcomes.put(cell, CellOutcome.saved(there, List.of()));
            } else if (!there.equals(value.seen())) {
                outcomes.put(
                        cell, CellOutcome.changedMeanwhile(there, target.there().map(row -> row.recordedAt)));
            } else {
                changes.put(cell, value.value());
            }
        });
        if (!changes.isEmpty()) {
            outcomes.putAll(store(place, target, changes));
        }
        return outcomes;
    }

    private <E extends AnimalEvent> Map<SheetCell, CellOutcome> store(
            Place place, Target<E> target, Map<SheetCell, Optional<Double>> changes) {
        try {
            if (target.there().isEmpty()) {
                return create(place, target, changes);
            }
            E known = target.there().get();
            boolean keepsNothing = target.cells().stream()
                    .allMatch(cell ->
                            changes.getOrDefault(cell, target.value(cell)).isEmpty());
            if (keepsNothing && !target.hasMore().test(known)) {
                amendment.withdraw(
                        target.kind(), place.herd(), place.writtenBy(), known.id, version -> version == known.version);
                return each(changes, value -> CellOutcome.saved(Optional.empty(), List.of()));
            }
            ObjectNode patch = JsonNodeFactory.instance.objectNode();
            changes.forEach((cell, value) ->
                    value.ifPresentOrElse(to -> patch.put(cell.member(), to), () -> patch.putNull(cell.member())));
            RowOutcome<E> outcome = amendment.change(
                    target.kind(),
                    place.herd(),
                    place.writtenBy(),
                    known.id,
                    version -> version == known.version,
                    Edit.merging(new MergePatch(patch)));
            return outcomes(target, changes, outcome);
        } catch (Problem problem) {
            if (problem.code() == ProblemCode.VERSION_MISMATCH || problem.code() == ProblemCode.NOT_FOUND) {
                // written in the moment since it was read: the typist looks again
                return each(changes, value -> CellOutcome.changedMeanwhile(Optional.empty(), Optional.empty()));
            }
            throw problem;
        }
    }

    private <E extends AnimalEvent> Map<SheetCell, CellOutcome> create(
            Place place, Target<E> target, Map<SheetCell, Optional<Double>> changes) {
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        content.putObject("animal").put("id", place.animalId());
        target.begun().accept(content);
        changes.forEach((cell, value) -> value.ifPresent(kept -> content.put(cell.member(), kept)));
        return intake.takeNew(target.kind(), place.herd(), place.writtenBy(), PostedRow.single(content))
                .map(outcome -> outcomes(target, changes, outcome))
                .orElseGet(
                        () -> each(changes, value -> CellOutcome.changedMeanwhile(Optional.empty(), Optional.empty())));
    }

    /** Findings go to the cell they name; those that name none, or a day, go to the first. */
    private static <E extends AnimalEvent> Map<SheetCell, CellOutcome> outcomes(
            Target<E> target, Map<SheetCell, Optional<Double>> changes, RowOutcome<E> outcome) {
        boolean isRefused = outcome.outcome() == Outcome.REFUSED;
        Map<SheetCell, CellOutcome> outcomes = new EnumMap<>(SheetCell.class);
        SheetCell first = changes.keySet().iterator().next();
        changes.forEach((cell, value) -> {
            List<FindingView> hers = outcome.findings().stream()
                    .filter(finding -> finding.grade() != Grade.INFO)
                    .filter(finding -> belongs(finding, cell) || (cell == first && ofNone(finding, changes)))
                    .toList();
            outcomes.put(
                    cell, isRefused ? CellOutcome.refused(target.value(cell), hers) : CellOutcome.saved(value, hers));
        });
        return outcomes;
    }

    private static boolean ofNone(FindingView finding, Map<SheetCell, Optional<Double>> changes) {
        return changes.keySet().stream().noneMatch(cell -> belongs(finding, cell));
    }

    private static boolean belongs(FindingView finding, SheetCell cell) {
        return finding.pointer() != null && finding.pointer().endsWith("/" + cell.member());
    }

    private static Map<SheetCell, CellOutcome> each(
            Map<SheetCell, Optional<Double>> changes, Function<Optional<Double>, CellOutcome> outcome) {
        Map<SheetCell, CellOutcome> outcomes = new EnumMap<>(SheetCell.class);
        changes.forEach((cell, value) -> outcomes.put(cell, outcome.apply(value)));
        return outcomes;
    }
}
