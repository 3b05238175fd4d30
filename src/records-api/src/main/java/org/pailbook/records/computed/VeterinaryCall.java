package org.pailbook.records.computed;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.records.store.CowRecord;

/** A cow of the herd to see the veterinarian about, and why: the one walk for answers and pages. */
public record VeterinaryCall(CowRecord record, VeterinaryTrigger trigger) {
    /**
     * Cows that left are not in it.
     *
     * @param animals as recorded
     * @param onDay the same in the same order, as they were on the day
     * @param milked the same in the same order, what is recorded of their milk
     */
    public static List<VeterinaryCall> of(
            List<CowRecord> animals, List<CowOnDay> onDay, List<MilkedCow> milked, LocalDate day) {
        List<VeterinaryCall> calls = new ArrayList<>();
        for (int i = 0; i < animals.size(); i++) {
            if (!onDay.get(i).hasLeft()) {
                CowRecord record = animals.get(i);
                MilkedCow cow = milked.get(i);
                VeterinaryTrigger.ofCow(cow.foremilkChecks(), cow.lastCalving(), day)
                        .forEach(trigger -> calls.add(new VeterinaryCall(record, trigger)));
                VeterinaryTrigger.ofTreatedCow(cow.foremilkChecks(), cow.treatments(), day)
                        .ifPresent(trigger -> calls.add(new VeterinaryCall(record, trigger)));
            }
        }
        return calls;
    }
}
