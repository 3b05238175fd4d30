package org.pailbook.lactation.figure;

import java.util.List;
import java.util.Objects;
import org.pailbook.lactation.sentence.Sentence;

/**
 * How a figure was made, part by part: the parts add up to its value.
 *
 * @param parts in the order they were added
 */
public record Explanation(List<Part> parts) {

    /** For figures that are no sum. */
    public static final Explanation NONE = new Explanation(List.of());

    public Explanation {
        parts = List.copyOf(parts);
    }

    /**
     * One addend.
     *
     * @param said what it stands for, with the arithmetic where it is short: {@code 28 d x (24.8 + 28.2) / 2 kg}
     * @param amount in the unit of the figure
     */
    public record Part(Sentence said, double amount) {
        public Part {
            Objects.requireNonNull(said, "said");
        }

        /** A part that is told by a formula. */
        public Part(String formula, double amount) {
            this(Sentence.verbatim(formula), amount);
        }

        /** In English. */
        public String what() {
            return said.text();
        }
    }

    /** The sum of all parts, added in order. */
    public double total() {
        double sum = 0;
        for (Part part : parts) {
            sum += part.amount;
        }
        return sum;
    }
}
