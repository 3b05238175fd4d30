package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingRecord.State;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Measure;

/** Days of a herd's cows between calving, service, conception and calving, over the year to a day. */
public final class BreedingIntervals {
    private final List<BreedingRecord> cows;
    private final List<BreedingPeriod> periods;
    private final BreedingSettings settings;
    private final LocalDate from;
    private final LocalDate asOf;

    BreedingIntervals(List<BreedingRecord> cows, BreedingSettings settings, LocalDate from, LocalDate asOf) {
        this.cows = List.copyOf(cows);
        this.periods = cows.stream().flatMap(cow -> cow.periods().stream()).toList();
        this.settings = settings;
        this.from = from;
        this.asOf = asOf;
    }

    public Measured daysToFirstService() {
        long days = 0;
        int n = 0;
        for (BreedingPeriod period : periods) {
            if (period.calving().isPresent() && !period.services().isEmpty()) {
                LocalDate first = period.services().get(0).firstDate();
                if (isInYear(first)) {
                    days += ChronoUnit.DAYS.between(period.calving().get(), first);
                    n++;
                }
            }
        }
        return mean(BreedingMeasures.DAYS_TO_FIRST_SERVICE, days, n, WhatIsRecorded.services(periods));
    }

    private Measured mean(Measure measure, double sum, int n, List<Finding> findings) {
        return Measured.ratio(measure, sum, n, 1, "d", asOf, findings);
    }

    /** Of cows that conceived in the year; says that open cows are not in it. */
    public Measured daysOpen() {
        long days = 0;
        int n = 0;
        for (BreedingPeriod period : periods) {
            Optional<LocalDate> conception = period.pregnancies().stream()
                    .filter(pregnancy -> pregnancy.lostOn().isEmpty())
                    .flatMap(pregnancy -> pregnancy.conception().stream())
                    .filter(this::isInYear)
                    .findFirst();
            if (period.calving().isPresent() && conception.isPresent()) {
                days += ChronoUnit.DAYS.between(period.calving().get(), conception.get());
                n++;
            }
        }
        List<Finding> findings = new ArrayList<>(WhatIsRecorded.of(periods));
        findings.add(Finding.of(FindingCode.OPEN_COWS_LEFT_OUT));
        return mean(BreedingMeasures.MEAN_DAYS_OPEN, days, n, findings);
    }

    /** Of cows past the waiting period and not found pregnant, in the herd on the day. */
    public Measured daysOpenSoFar() {
        List<BreedingRecord> open = cows.stream()
                .filter(cow -> cow.state() == State.OPEN || cow.state() == State.SERVED)
                .filter(cow -> cow.now().notToBeBred().isEmpty())
                .filter(cow -> cow.daysSinceCalving().orElse(-1) >= settings.waitingDays())
                .toList();
        return mean(
                BreedingMeasures.MEAN_DAYS_OPEN_SO_FAR,
                open.stream()
                        .mapToInt(cow -> cow.daysSinceCalving().orElseThrow())
                        .sum(),
                open.size(),
                List.of());
    }

    public Measured projectedCalvingInterval() {
        long days = 0;
        int n = 0;
        for (BreedingRecord cow : cows) {
            Optional<ExpectedCalving> expected = cow.expectedCalving();
            if (expected.isPresent() && cow.now().calving().isPresent()) {
                days += ChronoUnit.DAYS.between(
                        cow.now().calving().get(), expected.get().due());
                n++;
            }
        }
        return mean(BreedingMeasures.PROJECTED_CALVING_INTERVAL, days, n, WhatIsRecorded.of(periods));
    }

    public Measured calvingInterval() {
        long days = 0;
        int n = 0;
        for (BreedingPeriod period : periods) {
            Optional<LocalDate> next = period.nextCalving().filter(this::isInYear);
            if (period.calving().isPresent() && next.isPresent()) {
                days += ChronoUnit.DAYS.between(period.calving().get(), next.get());
                n++;
            }
        }
        return mean(BreedingMeasures.CALVING_INTERVAL, days, n, List.of());
    }

    private boolean isInYear(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(asOf);
    }

    /** Cows whose waiting period ended in the year. */
    public TimeToPregnancy.Curve timeToPregnancy() {
        return TimeToPregnancy.KAPLAN_MEIER.of(periods, settings.waitingDays(), from, asOf);
    }
}
