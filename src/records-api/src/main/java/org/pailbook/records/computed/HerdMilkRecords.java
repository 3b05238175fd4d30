package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.Quarter;
import org.pailbook.lactation.event.Treatment;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.ForemilkCheckRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.TreatmentRow;

/**
 * What is recorded of the milk of a herd's cows: treatments with the withholding days entered, and foremilk checks. A check that found a
 * quarter normal and has the action {@code none} clears it; without that action it clears nothing.
 */
@ApplicationScoped
public class HerdMilkRecords {
    private static final LocalTime NOON = LocalTime.NOON;

    private final Events events;

    @Inject
    HerdMilkRecords(Events events) {
        this.events = events;
    }

    /** One for each of these animals, in their order, with records up to a day. */
    public List<MilkedCow> of(HerdRow herd, List<CowRecord> animals, LocalDate asOf) {
        Map<String, List<TreatmentRow>> treatments = events.byAnimal(TreatmentRow.class, herd, asOf);
        Map<String, List<ForemilkCheckRow>> checks = events.byAnimal(ForemilkCheckRow.class, herd, asOf);
        return animals.stream()
                .map(animal -> milked(
                        animal,
                        treatments.getOrDefault(animal.id(), List.of()),
                        checks.getOrDefault(animal.id(), List.of()),
                        asOf))
                .toList();
    }

    /** One animal. */
    public MilkedCow of(HerdRow herd, CowRecord animal, LocalDate asOf) {
        return milked(
                animal,
                events.allOf(animal.id(), TreatmentRow.class, herd, null, asOf),
                events.allOf(animal.id(), ForemilkCheckRow.class, herd, null, asOf),
                asOf);
    }

    private static MilkedCow milked(
            CowRecord animal, List<TreatmentRow> treatments, List<ForemilkCheckRow> checks, LocalDate asOf) {
        return new MilkedCow(
                animal.id(),
                animal.history().asOf(asOf).calvings().stream()
                        .map(Calving::date)
                        .max(Comparator.naturalOrder()),
                treatments.stream().map(HerdMilkRecords::treatment).toList(),
                checks.stream().map(HerdMilkRecords::check).toList());
    }

    private static Treatment treatment(TreatmentRow row) {
        return new Treatment(
                row.date,
                row.productName,
                Optional.ofNullable(row.milkWithheldUntil).map(WithholdingEnd::through),
                Optional.ofNullable(row.prescriber).orElse(""));
    }

    private static ForemilkCheck check(ForemilkCheckRow row) {
        ForemilkCheck.Milk milk = switch (row.finding) {
            case "normal" -> ForemilkCheck.Milk.NORMAL;
            case "flakes" -> ForemilkCheck.Milk.CLOTS;
            case "watery" -> ForemilkCheck.Milk.WATERY;
            case "blood" -> ForemilkCheck.Milk.BLOOD;
            case "noMilk" -> ForemilkCheck.Milk.NONE;
            default -> ForemilkCheck.Milk.YELLOW;
        };
        return new ForemilkCheck(
                at(row),
                quarter(row.quarter),
                milk,
                udder(row.udder),
                Boolean.TRUE.equals(row.cowIll),
                said(row, milk),
                by(row));
    }

    /** Milkings have a place in the day and no hour: those after the first are put at noon. */
    private static LocalDateTime at(ForemilkCheckRow row) {
        return switch (row.milkingOfDay) {
            case "am" -> row.date.atStartOfDay();
            case "pm" -> row.date.atTime(NOON);
            default -> row.date.atTime(NOON.plusHours(1));
        };
    }

    private static Optional<Quarter> quarter(String code) {
        return switch (code) {
            case "LF" -> Optional.of(Quarter.LEFT_FRONT);
            case "RF" -> Optional.of(Quarter.RIGHT_FRONT);
            case "LR" -> Optional.of(Quarter.LEFT_REAR);
            case "RR" -> Optional.of(Quarter.RIGHT_REAR);
            default -> Optional.empty();
        };
    }

    private static ForemilkCheck.Udder udder(String code) {
        if (code == null) {
            return ForemilkCheck.Udder.NOT_RECORDED;
        }
        return switch (code) {
            case "hard" -> ForemilkCheck.Udder.HARD;
            case "hot" -> ForemilkCheck.Udder.HOT;
            case "painful" -> ForemilkCheck.Udder.PAINFUL;
            default -> ForemilkCheck.Udder.NORMAL;
        };
    }

    private static ForemilkCheck.Said said(ForemilkCheckRow row, ForemilkCheck.Milk milk) {
        if ("withheld".equals(row.action)) {
            return ForemilkCheck.Said.WITHHELD;
        }
        return milk == ForemilkCheck.Milk.NORMAL && "none".equals(row.action)
                ? ForemilkCheck.Said.CLEARED
                : ForemilkCheck.Said.NOTHING;
    }

    private static String by(ForemilkCheckRow row) {
        return Optional.ofNullable(row.checkedBy).orElse("");
    }
}
