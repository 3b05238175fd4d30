package org.pailbook.lactation.culling;

import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/** Reasons in words, with a cow's figures beside what is typical. */
final class Words {
    private static final int PERCENT = 100;

    private Words() {}

    static Sentence milkLevel(double level) {
        return Sentence.of(SentenceCode.REASON_MILK, Amount.number(level * PERCENT, 0));
    }

    static Sentence pregnancy(CowPlace place, int typicalMonths) {
        if (place.pregnantShare() == 1) {
            return Sentence.of(SentenceCode.REASON_PREGNANT, place.monthsPregnant(), place.month(), typicalMonths);
        }
        return place.pregnantShare() == 0
                ? Sentence.of(SentenceCode.REASON_OPEN, place.month(), typicalMonths)
                : Sentence.of(
                        SentenceCode.REASON_PERHAPS_PREGNANT,
                        Amount.number(place.pregnantShare() * PERCENT, 1),
                        place.month(),
                        typicalMonths);
    }

    static Sentence parity(int parity) {
        return Sentence.of(SentenceCode.REASON_PARITY, parity);
    }

    static Sentence health(HealthBurden burden) {
        return Sentence.of(
                SentenceCode.REASON_HEALTH,
                Amount.number(burden.extraCostCuPerMonth(), 2),
                Amount.number(burden.unplannedExitFactor(), 2));
    }
}
