package org.pailbook.lactation.method;

import java.util.Objects;

/**
 * Where a method was published.
 *
 * @param authors as printed, or the issuing body
 * @param year of publication
 * @param place journal, volume and page, or title of the guideline, with table or equation where known
 * @param howKnown whether the source was opened
 */
public record Citation(String authors, int year, String place, HowKnown howKnown) {

    public Citation {
        Objects.requireNonNull(authors, "authors");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(howKnown, "howKnown");
        if (authors.isBlank() || place.isBlank()) {
            throw new IllegalArgumentException(
                    "authors and place must not be blank: \"" + authors + "\", \"" + place + "\"");
        }
    }

    /** Authors, year and place in one line. */
    public String text() {
        return authors + " (" + year + "). " + place;
    }
}
