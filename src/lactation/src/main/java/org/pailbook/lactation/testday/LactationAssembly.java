package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.AssembledLactation.End;
import org.pailbook.lactation.testday.AssemblyRules.MissingDryOff;

/**
 * Puts what is on record of a cow, in whatever order, together to her lactations. No event is dropped: what contradicts another is kept and
 * told as a finding.
 *
 * <p>A lactation runs from a calving (or an abortion that counts) to the day before the next; a dry-off or her departure ends it earlier.
 * If she calved again without a dry-off on record, its end is worked out by rule and flagged. Tests belong to the lactation of their day,
 * also after its end; whether they may take part in a figure is decided by {@link UsableTests}.
 */
public final class LactationAssembly {
    private final AssemblyRules rules;
    private final DatedLimits limits;

    private LactationAssembly(AssemblyRules rules, DatedLimits limits) {
        this.rules = rules;
        this.limits = limits;
    }

    /** With our rules and the limits shipped. */
    public static LactationAssembly ofOurRules() {
        return by(AssemblyRules.OURS, DatedLimits.PUBLISHED);
    }

    /** @param limits those of its day hold for an event */
    public static LactationAssembly by(AssemblyRules rules, DatedLimits limits) {
        return new LactationAssembly(rules, limits);
    }

    /** @param asOf later events are as if not recorded */
    public CowLactations assemble(CowHistory history, LocalDate asOf) {
        return new Pass(history.asOf(asOf), asOf).run();
    }

    /** What starts a lactation. */
    private record Start(LocalDate date, OptionalInt parity) {}

    private final class Pass {
        private final CowHistory history;
        private final LocalDate asOf;
        private final List<Start> starts = new ArrayList<>();
        /** Findings of each start, same order. */
        private final List<List<Finding>> findings = new ArrayList<>();

        private final List<Finding> general = new ArrayList<>();

        Pass(CowHistory history, LocalDate asOf) {
            this.history = history;
            this.asOf = asOf;
        }

        CowLactations run() {
            collectStarts();
            int[] parities = Parities.of(
                    starts.stream().map(Start::date).toList(),
                    starts.stream().map(Start::parity).toList(),
                    findings);
            checkAges(parities);
            List<AssembledLactation> lactations = new ArrayList<>();
            for (int i = 0; i < starts.size(); i++) {
                lactations.add(lactation(i, parities[i]));
            }
            if (starts.isEmpty()) {
                general.add(Finding.of(FindingCode.NO_CALVING));
            }
            return new CowLactations(asOf, lactations, testsBeforeFirst(), generalFindings());
        }

        private void collectStarts() {
            List<Start> all = new ArrayList<>();
            for (Calving calving : history.calvings()) {
                all.add(new Start(calving.date(), calving.parity()));
            }
            List<LocalDate> counted = new ArrayList<>();
            for (Abortion abortion : history.abortions()) {
                boolean late = rules.abortionCountsFromDaysPregnant().isPresent()
                        && abortion.daysPregnant().orElse(0)
                                >= rules.abortionCountsFromDaysPregnant().getAsInt();
                if (abortion.startsLactation() || late) {
                    all.add(new Start(abortion.date(), OptionalInt.empty()));
                    counted.add(abortion.date());
                } else {
                    general.add(Finding.on(abortion.date(), FindingCode.ABORTION_NOT_COUNTED));
                }
            }
            all.sort(Comparator.comparing(Start::date));
            for (Start start : all) {
                Start last = starts.isEmpty() ? null : starts.get(starts.size() - 1);
                if (last != null && daysBetween(last.date(), start.date()) < rules.sameCalvingWithinDays()) {
                    mergeDouble(last, start);
                } else {
                    starts.add(start);
                    findings.add(new ArrayList<>());
                    if (counted.contains(start.date())) {
                        findings.get(findings.size() - 1).add(Finding.on(start.date(), FindingCode.ABORTION_COUNTED));
                    }
                    if (last != null) {
                        checkInterval(last.date(), start.date());
                    }
                }
            }
        }

        private void mergeDouble(Start kept, Start twice) {
            int index = starts.size() - 1;
            if (kept.parity().isEmpty()) {
                starts.set(index, new Start(kept.date(), twice.parity()));
            } else if (twice.parity().isPresent() && !twice.parity().equals(kept.parity())) {
                findings.get(index)
                        .add(Finding.on(twice.date(), FindingCode.PARITY_CONTRADICTS)
                                .withField("parity")
                                .withSeen(SentenceCode.PARITY, twice.parity().getAsInt())
                                .withExpected(SentenceCode.PARITY, kept.parity().getAsInt()));
            }
            findings.get(index)
                    .add(Finding.on(twice.date(), FindingCode.DUPLICATE_CALVING)
                            .withSeen(SentenceCode.CALVINGS_ON, kept.date(), twice.date())
                            .withExpected(SentenceCode.AT_LEAST_DAYS_BETWEEN, rules.sameCalvingWithinDays()));
        }

        private void checkInterval(LocalDate from, LocalDate to) {
            limits.on(to)
                    .check("calvingIntervalDays", daysBetween(from, to), BreedGroup.UNKNOWN)
                    .map(finding -> finding.withDate(to))
                    .ifPresent(findings.get(findings.size() - 1)::add);
        }

        private void checkAges(int[] parities) {
            if (starts.isEmpty() || history.birthDate().isEmpty() || parities[0] != 1) {
                return;
            }
            LocalDate first = starts.get(0).date();
            long months = ChronoUnit.MONTHS.between(history.birthDate().get(), first);
            limits.on(first)
                    .check("ageAtFirstCalvingMonths", months, BreedGroup.UNKNOWN)
                    .map(finding -> finding.withDate(first))
                    .ifPresent(findings.get(0)::add);
        }

        private AssembledLactation lactation(int index, int parity) {
            LocalDate calvingDate = starts.get(index).date();
            Optional<LocalDate> next = index + 1 < starts.size()
                    ? Optional.of(starts.get(index + 1).date())
                    : Optional.empty();
            Optional<LocalDate> lastDate = next.map(date -> date.minusDays(1));
            List<Finding> own = findings.get(index);
            List<TestDay> tests = history.testDays().stream()
                    .filter(test -> !test.date().isBefore(calvingDate)
                            && lastDate.map(last -> !test.date().isAfter(last)).orElse(true))
                    .toList();
            Lactation open = Lactation.inMilk(parity, calvingDate, tests);
            for (TestDay test : open.testDays()) {
                limits.on(test.date())
                        .check("daysInMilk", open.daysInMilk(test.date()), BreedGroup.UNKNOWN)
                        .map(finding -> finding.withDate(test.date()))
                        .ifPresent(own::add);
            }
            Optional<LocalDate> dryOff = dryOff(calvingDate, next, own);
            Optional<LocalDate> left = history.departures().stream()
                    .map(departure -> departure.date())
                    .filter(date -> !date.isBefore(calvingDate)
                            && lastDate.map(last -> !date.isAfter(last)).orElse(true))
                    .min(Comparator.naturalOrder());
            if (left.isPresent()) {
                flagAfterDeparture(left.get(), open, dryOff, next, own);
            }
            if (dryOff.isPresent()
                    && left.map(date -> !date.isBefore(dryOff.get())).orElse(true)) {
                return assembled(open.withEndDate(dryOff.get()), End.DRIED_OFF, lastDate, own);
            }
            if (left.isPresent()) {
                return assembled(open.withEndDate(left.get()), End.LEFT, lastDate, own);
            }
            if (next.isEmpty()) {
                return assembled(open, End.IN_MILK, lastDate, own);
            }
            own.add(Finding.on(next.get(), FindingCode.DRY_OFF_MISSING));
            return assembled(endWithoutDryOff(open, lastDate.orElseThrow(), own), End.NOT_RECORDED, lastDate, own);
        }

        /** The last dry-off between two calvings; one on the day of the next calving counts as the day before it. */
        private Optional<LocalDate> dryOff(LocalDate calvingDate, Optional<LocalDate> next, List<Finding> own) {
            List<LocalDate> inside = history.dryOffs().stream()
                    .map(dryOff -> dryOff.date())
                    .filter(date -> date.isAfter(calvingDate)
                            && next.map(calving -> !date.isAfter(calving)).orElse(true))
                    .sorted()
                    .toList();
            if (inside.isEmpty()) {
                return Optional.empty();
            }
            LocalDate last = inside.get(inside.size() - 1);
            for (LocalDate earlier : inside.subList(0, inside.size() - 1)) {
                own.add(Finding.on(earlier, FindingCode.DRY_OFF_REPEATED).withExpected(SentenceCode.ONE_DRY_OFF, last));
            }
            return Optional.of(next.isPresent() && last.equals(next.get()) ? last.minusDays(1) : last);
        }

        private void flagAfterDeparture(
                LocalDate left,
                Lactation lactation,
                Optional<LocalDate> dryOff,
                Optional<LocalDate> next,
                List<Finding> own) {
            dryOff.filter(date -> date.isAfter(left)).ifPresent(date -> own.add(afterDeparture(date, "dryOff", left)));
            next.ifPresent(date -> own.add(afterDeparture(date, "calving", left)));
            for (TestDay test : lactation.testDays()) {
                if (test.date().isAfter(left)) {
                    own.add(afterDeparture(test.date(), UsableTests.TEST_DAY, left));
                }
            }
        }

        private static Finding afterDeparture(LocalDate date, String what, LocalDate left) {
            return Finding.on(date, FindingCode.EVENT_AFTER_DEPARTURE)
                    .withField(what)
                    .withExpected(SentenceCode.NOTHING_AFTER, left);
        }

        private Lactation endWithoutDryOff(Lactation open, LocalDate lastDate, List<Finding> own) {
            if (rules.missingDryOff() == MissingDryOff.DAY_BEFORE_CALVING) {
                return open.withEstimatedEndDate(lastDate);
            }
            LocalDate end = EstimatedEnd.HALF_THE_LAST_INTERVAL
                    .of(open)
                    .filter(estimate -> estimate.isBefore(lastDate))
                    .orElse(lastDate);
            own.add(Finding.on(end, FindingCode.ESTIMATED_END));
            return open.withEstimatedEndDate(end);
        }

        private static AssembledLactation assembled(
                Lactation lactation, End end, Optional<LocalDate> lastDate, List<Finding> own) {
            own.sort(Comparator.comparing(finding -> finding.date().orElse(LocalDate.MIN)));
            return new AssembledLactation(lactation, end, lastDate, own);
        }

        private List<TestDay> testsBeforeFirst() {
            return history.testDays().stream()
                    .filter(test -> starts.isEmpty()
                            || test.date().isBefore(starts.get(0).date()))
                    .sorted(Comparator.comparing(TestDay::date))
                    .toList();
        }

        private List<Finding> generalFindings() {
            for (TestDay test : testsBeforeFirst()) {
                general.add(Finding.on(test.date(), FindingCode.TEST_BEFORE_CALVING));
            }
            LocalDate first = starts.isEmpty() ? LocalDate.MAX : starts.get(0).date();
            history.dryOffs().stream()
                    .filter(dryOff -> !dryOff.date().isAfter(first))
                    .forEach(dryOff -> general.add(outside(dryOff.date(), "dryOff")));
            history.departures().stream()
                    .filter(departure -> departure.date().isBefore(first))
                    .forEach(departure -> general.add(outside(departure.date(), "departure")));
            general.sort(Comparator.comparing(finding -> finding.date().orElse(LocalDate.MIN)));
            return general;
        }

        private static Finding outside(LocalDate date, String what) {
            return Finding.on(date, FindingCode.EVENT_OUTSIDE_LACTATIONS).withField(what);
        }

        private static long daysBetween(LocalDate from, LocalDate to) {
            return ChronoUnit.DAYS.between(from, to);
        }
    }
}
