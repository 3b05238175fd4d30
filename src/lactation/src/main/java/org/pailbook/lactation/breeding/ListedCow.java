package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.Objects;
import org.pailbook.lactation.sentence.Sentence;

/**
 * A cow on a list.
 *
 * @param cow she
 * @param list which
 * @param day since when she is due for it, or the day it is due
 * @param said what on her record put her there, one sentence
 */
public record ListedCow(BreedingRecord cow, BreedingList list, LocalDate day, Sentence said) {
    public ListedCow {
        Objects.requireNonNull(cow, "cow");
        Objects.requireNonNull(list, "list");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(said, "said");
    }

    /** What put her there, in English. */
    public String why() {
        return said.text();
    }
}
