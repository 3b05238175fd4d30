package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.Quarter;

/**
 * Cases of abnormal milk of one cow since her last calving, from foremilk checks: findings of one quarter no more than 14 days apart are one
 * case (common practice, no source).
 */
public final class UdderCases {
    /** A finding this many days after the last one of its quarter, or fewer, belongs to the same case. */
    public static final int SAME_CASE_DAYS = 14;

    private UdderCases() {}

    /**
     * One case.
     *
     * @param quarter empty if it was not named
     * @param firstOn day of the first finding
     * @param lastOn day of the last finding
     */
    public record Case(Optional<Quarter> quarter, LocalDate firstOn, LocalDate lastOn) {}

    /** In order of day; a record sent twice changes nothing. */
    public static List<Case> of(List<ForemilkCheck> checks, LocalDate from, LocalDate asOf) {
        List<Case> cases = new ArrayList<>();
        checks.stream()
                .filter(ForemilkCheck::isAbnormal)
                .filter(check -> !check.at().toLocalDate().isBefore(from)
                        && !check.at().toLocalDate().isAfter(asOf))
                .sorted(Comparator.comparing(ForemilkCheck::at))
                .forEach(check -> add(cases, check));
        return cases.stream().sorted(Comparator.comparing(Case::firstOn)).toList();
    }

    private static void add(List<Case> cases, ForemilkCheck check) {
        LocalDate day = check.at().toLocalDate();
        for (int i = 0; i < cases.size(); i++) {
            Case one = cases.get(i);
            if (one.quarter().equals(check.quarter())
                    && !day.isAfter(one.lastOn().plusDays(SAME_CASE_DAYS))) {
                cases.set(i, new Case(one.quarter(), one.firstOn(), day));
                return;
            }
        }
        cases.add(new Case(check.quarter(), day, day));
    }
}
