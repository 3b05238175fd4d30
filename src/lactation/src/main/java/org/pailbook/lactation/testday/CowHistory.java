package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.day.UpTo;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;

/**
 * Everything on record of one cow that makes lactations, in any order and as entered: doubles and contradictions included.
 *
 * @param birthDate her birth, if known
 * @param calvings in any order
 * @param dryOffs in any order
 * @param departures in any order
 * @param abortions in any order
 * @param testDays in any order; of two on one day the later in the list is the later entry
 */
public record CowHistory(
        Optional<LocalDate> birthDate,
        List<Calving> calvings,
        List<DryOff> dryOffs,
        List<Departure> departures,
        List<Abortion> abortions,
        List<TestDay> testDays) {

    public CowHistory {
        Objects.requireNonNull(birthDate, "birthDate");
        calvings = List.copyOf(calvings);
        dryOffs = List.copyOf(dryOffs);
        departures = List.copyOf(departures);
        abortions = List.copyOf(abortions);
        testDays = List.copyOf(testDays);
    }

    public static Builder builder() {
        return new Builder();
    }

    /** What was on record on that day, by the days of the events. */
    public CowHistory asOf(LocalDate day) {
        return new CowHistory(
                birthDate,
                UpTo.day(day, calvings, Calving::date),
                UpTo.day(day, dryOffs, DryOff::date),
                UpTo.day(day, departures, Departure::date),
                UpTo.day(day, abortions, Abortion::date),
                UpTo.day(day, testDays, TestDay::date));
    }

    /** Collects a history. Not for use by several threads. */
    public static final class Builder {
        private Optional<LocalDate> birthDate = Optional.empty();
        private final List<Calving> calvings = new ArrayList<>();
        private final List<DryOff> dryOffs = new ArrayList<>();
        private final List<Departure> departures = new ArrayList<>();
        private final List<Abortion> abortions = new ArrayList<>();
        private final List<TestDay> testDays = new ArrayList<>();

        private Builder() {}

        public Builder born(LocalDate date) {
            birthDate = Optional.of(date);
            return this;
        }

        public Builder calving(Calving calving) {
            calvings.add(calving);
            return this;
        }

        public Builder dryOff(DryOff dryOff) {
            dryOffs.add(dryOff);
            return this;
        }

        public Builder departure(Departure departure) {
            departures.add(departure);
            return this;
        }

        public Builder abortion(Abortion abortion) {
            abortions.add(abortion);
            return this;
        }

        public Builder testDay(TestDay test) {
            testDays.add(test);
            return this;
        }

        public Builder testDays(List<TestDay> tests) {
            testDays.addAll(tests);
            return this;
        }

        public CowHistory build() {
            return new CowHistory(birthDate, calvings, dryOffs, departures, abortions, testDays);
        }
    }
}
