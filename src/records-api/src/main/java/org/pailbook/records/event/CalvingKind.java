package org.pailbook.records.event;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.CalvingRow;
import org.pailbook.records.store.DryOffRow;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How calvings are read, checked and shown. */
@Singleton
public final class CalvingKind extends EventKind<CalvingRow> {
    private static final int MOST_CALVINGS = 25;
    private static final String INTERVAL = "calvingIntervalDays";
    private static final String GESTATION = "gestationDays";

    private static final List<Member<CalvingRow>> MEMBERS = Members.of(CalvingRow.class)
            .integer("parity", 1, MOST_CALVINGS, record -> record.parity, (record, value) -> record.parity = value)
            .integer("ease", 1, 5, record -> record.ease, (record, value) -> record.ease = value)
            .list();

    @Override
    public String name() {
        return "calvings";
    }

    @Override
    public Class<CalvingRow> entity() {
        return CalvingRow.class;
    }

    @Override
    protected List<Member<CalvingRow>> members() {
        return MEMBERS;
    }

    @Override
    protected List<Column> detailColumns() {
        List<Column> columns = new ArrayList<>(super.detailColumns());
        columns.addAll(Calves.columns());
        return columns;
    }

    @Override
    protected CalvingRow newRecord() {
        return new CalvingRow();
    }

    @Override
    protected void readDetails(Fields fields, CalvingRow record) {
        super.readDetails(fields, record);
        record.calves = Calves.read(fields);
    }

    @Override
    protected void writeDetails(CalvingRow record, ObjectNode content) {
        super.writeDetails(record, content);
        Calves.write(record.calves, content);
    }

    @Override
    protected void checkDetails(Posted<CalvingRow> posted, CalvingRow replaced, Surroundings surroundings) {
        CalvingRow record = posted.record();
        String replacedId = replaced == null ? null : replaced.id;
        surroundings.nearestCalving(record.animalId, record.date, replacedId).ifPresent(other -> {
            long apartDays = Math.abs(other.toEpochDay() - record.date.toEpochDay());
            ValueLimit impossible =
                    ValueLimits.PUBLISHED.impossible(INTERVAL, apartDays).orElse(null);
            if (impossible != null) {
                posted.add(FindingView.error(
                                "calvings-too-close", posted.pointer("date"), "is too near to another calving")
                        .seen(apartDays + " days from " + other)
                        .expecting(impossible.words()));
            } else {
                warnOfShortInterval(posted, apartDays, other);
            }
        });
        surroundings
                .departureBefore(record.animalId, record.date)
                .ifPresent(left -> posted.add(FindingView.warning(
                                "after-departure",
                                posted.pointer("date"),
                                "lies after the animal left; it is taken as having come back")
                        .seen(record.date.toString())));
        checkGestation(posted, surroundings);
        checkAge(posted, surroundings);
        surroundings
                .lastOnOrBefore(DryOffRow.class, record.animalId, record.date.minusDays(1))
                .ifPresent(driedOff ->
                        DryPeriod.check(posted, dayMember(), driedOff, record.date, replacedId, surroundings));
    }

    @Override
    protected void noteTaken(CalvingRow taken, CalvingRow replaced, Surroundings surroundings) {
        surroundings.noteCalving(taken.animalId, taken.date, replaced == null ? null : replaced.id);
    }

    private static void warnOfShortInterval(Posted<CalvingRow> posted, long apartDays, LocalDate other) {
        // neighbours far apart say little at entry: calvings between them may follow in the next rows
        if (apartDays < DaysInMilk.STANDARD_LACTATION_DAYS) {
            ValueChecks.odd(posted, INTERVAL, apartDays)
                    .ifPresent(odd -> posted.add(FindingView.warning(
                                    "short-calving-interval",
                                    posted.pointer("date"),
                                    "is nearer to another calving than gestation lasts")
                            .seen(apartDays + " days from " + other)
                            .expecting(odd.expected().orElse(null))));
        }
    }

    /** Only where she is said to have calved for the first time: what was before the first calving recorded is not known. */
    private void checkAge(Posted<CalvingRow> posted, Surroundings surroundings) {
        CalvingRow record = posted.record();
        LocalDate born = surroundings.birthDate(record.animalId);
        if (born != null && Objects.equals(record.parity, 1)) {
            ValueChecks.warn(
                    posted,
                    "ageAtFirstCalvingMonths",
                    dayMember(),
                    ChronoUnit.MONTHS.between(born, record.date),
                    "is an unusual age for a first calving; was she born on " + born + "?");
        }
    }

    /** One of the services since the calving before should lie a usual gestation back. */
    private void checkGestation(Posted<CalvingRow> posted, Surroundings surroundings) {
        CalvingRow record = posted.record();
        LocalDate before = surroundings
                .calvingOnOrBefore(record.animalId, record.date.minusDays(1))
                .orElse(LocalDate.MIN);
        List<LocalDate> served = surroundings.daysBefore(ServiceRow.class, record.animalId, record.date).stream()
                .filter(day -> day.isAfter(before))
                .toList();
        boolean fits = served.stream()
                .anyMatch(day -> ValueChecks.odd(posted, GESTATION, DaysInMilk.on(day, record.date))
                        .isEmpty());
        if (!served.isEmpty() && !fits) {
            int days = DaysInMilk.on(served.get(served.size() - 1), record.date);
            ValueChecks.warn(
                    posted, GESTATION, dayMember(), days, "lies no usual gestation after any service recorded");
        }
    }

    @Override
    protected Set<Class<? extends AnimalEvent>> looksAt() {
        return Set.of(ServiceRow.class, DryOffRow.class);
    }
}
