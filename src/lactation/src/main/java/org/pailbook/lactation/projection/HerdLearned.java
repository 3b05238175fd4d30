package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.pailbook.lactation.reference.LactationStandard;

/**
 * A herd's standards together with what single test days did to the whole herd: each spoils the other, so they are learned in turn.
 *
 * <p>A scale that read a fifth too much on one day makes the herd look better than it is, and by that mean the day looks less odd than it was. So where a date
 * looks odd: standards, effects of the odd dates, striking ones taken out of all weights, standards from these, {@value #ROUNDS} times. Where none does, which is
 * the rule, standards are learned once. Ours.
 *
 * @param history lactations with striking test days' common part taken out
 * @param standards learned from these
 * @param days effects of odd dates on the weights as recorded; no dates in most herds
 */
public record HerdLearned(List<HerdLactation> history, HerdStandards standards, HerdTestDays days) {
    private static final int ROUNDS = 3;

    public HerdLearned {
        history = List.copyOf(history);
    }

    /**
     * @param recorded lactations of the herd, ended or not, of any cows
     * @param asOf later tests take no part
     */
    public static HerdLearned from(List<HerdLactation> recorded, LocalDate asOf) {
        HerdStandards standards = HerdStandards.learn(recorded, asOf);
        Set<LocalDate> odd = OddHerdDates.of(recorded, standards, asOf);
        HerdLearned learned = new HerdLearned(recorded, standards, HerdTestDays.ofOdd(odd, List.of(), standards, asOf));
        for (int round = 0; round < ROUNDS && !odd.isEmpty(); round++) {
            HerdTestDays days = HerdTestDays.ofOdd(odd, recorded, learned.standards(), asOf);
            TestDayEffects striking = days.withoutCow("").striking();
            if (striking.isEmpty()) {
                return new HerdLearned(recorded, standards, days);
            }
            HerdStandards before = learned.standards();
            List<HerdLactation> mended = recorded.stream()
                    .map(one -> mended(one, striking, before.ofGroup(one)))
                    .toList();
            learned = new HerdLearned(mended, HerdStandards.learn(mended, asOf), days);
        }
        return learned;
    }

    private static HerdLactation mended(HerdLactation one, TestDayEffects effects, LactationStandard standard) {
        return effects.concerns(one.lactation())
                ? new HerdLactation(one.animal(), one.breed(), effects.takenOutOf(one.lactation(), standard))
                : one;
    }
}
