package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.CountedService.Outcome;

/**
 * The 21-day pregnancy rate, counted exactly: of the cows that could have become pregnant in a cycle of 21 days, those that did.
 *
 * <p>Cycles are counted back from a last day. A cow is eligible in a cycle with {@value #ELIGIBLE_DAYS} days at risk or more (ours): her days run
 * from the end of the waiting period to the day before she left, calved or was put aside, and again from the day after a loss. Her own
 * conception does not shorten them; pregnant from an earlier cycle she is out. Eligible and served with no outcome known, she counts for
 * the services and not for the pregnancies. A cycle with more than a tenth of such cows has no rate yet.
 *
 * @see "Nebel (2003) and Penn State (2007), extension: the share of eligible cows that conceive in 21 days (read)"
 */
public final class PregnancyRate21 {
    public static final int CYCLE_DAYS = 21;

    /** More than half a cycle. */
    public static final int ELIGIBLE_DAYS = 11;

    private static final double MOST_PENDING = 0.10;

    private final List<Cycle> cycles;

    /**
     * One cycle, of one herd.
     *
     * @param first day
     * @param last day
     * @param eligible cows with days enough at risk
     * @param served of them, served at least once at risk
     * @param pregnant of them, conceived in it
     * @param pending of them, served and no outcome known
     * @param pregnantUncounted conceptions in it of cows not eligible, or before the waiting period ended
     * @param cowDays days at risk in it of all cows, the day of conception the last
     * @param conceptionsAtRisk conceptions in those days
     */
    public record Cycle(
            LocalDate first,
            LocalDate last,
            int eligible,
            int served,
            int pregnant,
            int pending,
            int pregnantUncounted,
            int cowDays,
            int conceptionsAtRisk) {

        /** Eligible cows of whom it is known whether they conceived. */
        public int known() {
            return eligible - pending;
        }

        /** Whether too many outcomes are unknown for a rate. */
        public boolean isPending() {
            return pending > MOST_PENDING * eligible;
        }
    }

    /** A period of a cow that calved, her days at risk worked out once for all cycles. */
    private record AtRisk(BreedingPeriod period, LocalDate waitingEnd, DaysAtRisk days) {
        /** Whether any day of the period lies in a cycle; if not, nothing of it is counted there. */
        boolean touches(LocalDate first, LocalDate last) {
            return !period.calving().orElseThrow().isAfter(last)
                    && (period.nextCalving().isEmpty()
                            || !period.nextCalving().get().isBefore(first));
        }
    }

    private PregnancyRate21(List<Cycle> cycles) {
        this.cycles = List.copyOf(cycles);
    }

    /**
     * @param periods of all cows, also of those that left since
     * @param lastDay the last day of the last cycle
     * @param count how many cycles, 1 or more
     */
    public static PregnancyRate21 of(List<BreedingPeriod> periods, int waitingDays, LocalDate lastDay, int count) {
        List<AtRisk> cows = new ArrayList<>();
        for (BreedingPeriod period : periods) {
            period.waitingEnd(waitingDays)
                    .ifPresent(end -> cows.add(new AtRisk(period, end, DaysAtRisk.of(period, waitingDays, lastDay))));
        }
        List<Cycle> cycles = new ArrayList<>();
        for (int i = count - 1; i >= 0; i--) {
            LocalDate last = lastDay.minusDays((long) CYCLE_DAYS * i);
            cycles.add(cycle(cows, last.minusDays(CYCLE_DAYS - 1L), last));
        }
        return new PregnancyRate21(cycles);
    }

    private static Cycle cycle(List<AtRisk> cows, LocalDate first, LocalDate last) {
        int eligible = 0;
        int served = 0;
        int pregnant = 0;
        int pending = 0;
        int uncounted = 0;
        int cowDays = 0;
        int conceptions = 0;
        for (AtRisk cow : cows) {
            if (!cow.touches(first, last)) {
                continue;
            }
            BreedingPeriod period = cow.period();
            DaysAtRisk risk = cow.days();
            int atRisk = risk.conceptions(first, last);
            cowDays += risk.between(first, last);
            conceptions += atRisk;
            int all = conceptions(period, first, last);
            if (risk.inCycle(first, last) < ELIGIBLE_DAYS) {
                uncounted += all;
                continue;
            }
            eligible++;
            uncounted += all - Math.min(1, atRisk);
            LocalDate from = cow.waitingEnd().isAfter(first) ? cow.waitingEnd() : first;
            boolean isServed = false;
            boolean isUnknown = false;
            for (CountedService service : period.services()) {
                if (isIn(service.date(), from, last)) {
                    isServed = true;
                    isUnknown |= service.outcome() == Outcome.UNKNOWN;
                }
            }
            served += isServed ? 1 : 0;
            pregnant += atRisk > 0 ? 1 : 0;
            pending += atRisk == 0 && isUnknown ? 1 : 0;
        }
        return new Cycle(first, last, eligible, served, pregnant, pending, uncounted, cowDays, conceptions);
    }

    private static boolean isIn(LocalDate day, LocalDate from, LocalDate to) {
        return !day.isBefore(from) && !day.isAfter(to);
    }

    private static int conceptions(BreedingPeriod period, LocalDate first, LocalDate last) {
        int count = 0;
        for (Pregnancy pregnancy : period.pregnancies()) {
            Optional<LocalDate> conception = pregnancy.conception();
            count += conception.isPresent() && isIn(conception.get(), first, last) ? 1 : 0;
        }
        return count;
    }

    /** In order of day. */
    public List<Cycle> cycles() {
        return cycles;
    }
}
