package org.pailbook.lactation.withheld;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.Quarter;
import org.pailbook.lactation.event.Treatment;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Finds whose milk must stay out of the tank at a moment. Rules: a treatment from its first day to the end entered, and without an end until
 * one is entered; foremilk that was not normal until that quarter is cleared by a person; the colostrum days.
 *
 * <p>The first days after calving are a setting, since local rules differ. Not on this list means that nothing is recorded against her milk.
 */
public final class WithheldMilk {
    /** The calving day and the four after it, as for test days. */
    public static final WithheldMilk USUAL = new WithheldMilk(DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM - 1);

    /** To be shown with every list made of it. */
    public static final String CAUTION =
            "A cow that is not on this list has nothing recorded against her milk: that does not say it is safe. "
                    + "Withholding days are shown as entered; ask your veterinarian and read the label. "
                    + "An end that was not entered is treated as not over.";

    public static final int MOST_COLOSTRUM_DAYS = 30;

    private final int colostrumDays;

    private WithheldMilk(int colostrumDays) {
        this.colostrumDays = colostrumDays;
    }

    /** @param days the calving day and so many days after it are withheld; 0 to 30 */
    public static WithheldMilk withColostrumDays(int days) {
        if (days < 0 || days > MOST_COLOSTRUM_DAYS) {
            throw new IllegalArgumentException("days (" + days + ") must be 0 to " + MOST_COLOSTRUM_DAYS);
        }
        return new WithheldMilk(days);
    }

    public int colostrumDays() {
        return colostrumDays;
    }

    /** The last second of a day, for a list that is asked for a day: all that was recorded on it takes part. */
    public static LocalDateTime endOf(LocalDate day) {
        return day.plusDays(1).atStartOfDay().minusSeconds(1);
    }

    /** The cows whose milk must stay out, in the order given. */
    public List<WithheldCow> of(List<MilkedCow> cows, LocalDateTime at) {
        return cows.stream().flatMap(cow -> of(cow, at).stream()).toList();
    }

    /** One cow; empty if nothing is recorded against her milk at that moment. */
    public Optional<WithheldCow> of(MilkedCow cow, LocalDateTime at) {
        List<WithheldReason> reasons = new ArrayList<>();
        cow.treatments().stream()
                .distinct()
                .filter(treatment -> !treatment.startedOn().atStartOfDay().isAfter(at))
                .flatMap(treatment -> ofTreatment(treatment, at).stream())
                .forEach(reasons::add);
        for (Quarter quarter : Quarter.values()) {
            ofForemilk(cow.foremilkChecks(), quarter, at).ifPresent(reasons::add);
        }
        cow.lastCalving().flatMap(calving -> ofCalving(calving, at)).ifPresent(reasons::add);
        reasons.sort(Comparator.comparing(WithheldReason::since));
        return reasons.isEmpty()
                ? Optional.empty()
                : Optional.of(new WithheldCow(
                        cow.animal(), reasons.stream().distinct().toList()));
    }

    private static Optional<WithheldReason> ofTreatment(Treatment treatment, LocalDateTime at) {
        LocalDateTime since = treatment.startedOn().atStartOfDay();
        if (treatment.milkWithheldUntil().isEmpty()) {
            return Optional.of(new WithheldReason(
                    WithheldReason.Kind.TREATMENT_END_NOT_ENTERED,
                    Optional.empty(),
                    since,
                    Optional.empty(),
                    treatment.by(),
                    Sentence.of(SentenceCode.TREATED_NO_END, treatment.product(), treatment.startedOn())));
        }
        WithholdingEnd end = treatment.milkWithheldUntil().get();
        return end.isOver(at)
                ? Optional.empty()
                : Optional.of(new WithheldReason(
                        WithheldReason.Kind.TREATMENT,
                        Optional.empty(),
                        since,
                        Optional.of(end),
                        treatment.by(),
                        Sentence.of(
                                SentenceCode.TREATED_UNTIL, treatment.product(), treatment.startedOn(), end.text())));
    }

    /** Abnormal since the first check after the quarter was last cleared. */
    private static Optional<WithheldReason> ofForemilk(List<ForemilkCheck> checks, Quarter quarter, LocalDateTime at) {
        Optional<ForemilkCheck> since = Optional.empty();
        for (ForemilkCheck check : checks.stream()
                .filter(check -> !check.at().isAfter(at))
                .filter(check -> check.quarter().orElse(quarter) == quarter)
                // at one moment an abnormal finding outweighs a clearing
                .sorted(Comparator.comparing(ForemilkCheck::at).thenComparing(ForemilkCheck::isAgainstHerMilk))
                .toList()) {
            if (check.said() == ForemilkCheck.Said.CLEARED) {
                since = Optional.empty();
            } else if (check.isAgainstHerMilk() && since.isEmpty()) {
                since = Optional.of(check);
            }
        }
        return since.map(check -> new WithheldReason(
                WithheldReason.Kind.FOREMILK,
                Optional.of(quarter),
                check.at(),
                Optional.empty(),
                check.by(),
                Sentence.of(
                        SentenceCode.FOREMILK_NOT_CLEARED,
                        Sentence.of(check.quarter().isEmpty() ? SentenceCode.QUARTER_NOT_NAMED : quarter.said()),
                        Sentence.of(check.milk().said()),
                        check.at().toLocalDate())));
    }

    private Optional<WithheldReason> ofCalving(LocalDate calving, LocalDateTime at) {
        WithholdingEnd end = WithholdingEnd.through(calving.plusDays(colostrumDays));
        boolean withheld = colostrumDays > 0 && !calving.atStartOfDay().isAfter(at) && !end.isOver(at);
        return withheld
                ? Optional.of(new WithheldReason(
                        WithheldReason.Kind.COLOSTRUM,
                        Optional.empty(),
                        calving.atStartOfDay(),
                        Optional.of(end),
                        "",
                        Sentence.of(SentenceCode.COLOSTRUM_BY_SETTING, calving, colostrumDays)))
                : Optional.empty();
    }

    /** Quarters whose foremilk was looked at from one moment to another; empty: not recorded, which is not normal. */
    public static List<Quarter> lookedAt(MilkedCow cow, LocalDateTime from, LocalDateTime to) {
        return cow.foremilkChecks().stream()
                .filter(check -> !check.at().isBefore(from) && !check.at().isAfter(to))
                .flatMap(check -> check.quarter().map(Stream::of).orElseGet(() -> Arrays.stream(Quarter.values())))
                .distinct()
                .sorted()
                .toList();
    }
}
