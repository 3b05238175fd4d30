package org.pailbook.lactation.projection;

import java.util.Objects;
import org.pailbook.lactation.testday.Lactation;

/**
 * A lactation a herd can be learned from, with whose it is.
 *
 * @param animal tells cows apart; any text
 * @param breed code or name; unknown ones form a group of their own
 * @param lactation as recorded
 */
public record HerdLactation(String animal, String breed, Lactation lactation) {
    public HerdLactation {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(breed, "breed");
        Objects.requireNonNull(lactation, "lactation");
    }
}
