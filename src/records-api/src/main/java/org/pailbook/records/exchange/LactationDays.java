package org.pailbook.records.exchange;

import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/**
 * The days of one lactation with what belongs to it: from its calving to the day before the next one.
 *
 * @param last the day before first if there is no such lactation
 */
record LactationDays(LocalDate first, LocalDate last) {
    private static final LocalDate NEVER = LocalDate.of(2101, 1, 1);

    /** @param animal null if none was named, which is refused: every cow has a lactation of that parity */
    static LactationDays of(String parity, AnimalRow animal, HerdRow herd, CowRecords cows) {
        if (!parity.matches("[1-9][0-9]?")) {
            throw Problem.badParameter("parity", "expected a number from 1 to 99", parity);
        }
        if (animal == null) {
            throw Problem.badParameter("parity", "needs animal beside it", parity);
        }
        List<AssembledLactation> all =
                cows.ofAnimal(herd, animal, NEVER).onDay(NEVER).lactations().lactations();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).lactation().parity() == Integer.parseInt(parity)) {
                LocalDate next = i + 1 < all.size() ? all.get(i + 1).lactation().calvingDate() : NEVER;
                return new LactationDays(all.get(i).lactation().calvingDate(), next.minusDays(1));
            }
        }
        return new LactationDays(NEVER, NEVER.minusDays(1));
    }
}
