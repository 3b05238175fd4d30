package org.pailbook.picture;

import java.util.Locale;

/**
 * How large a picture is drawn before it is scaled, and how it speaks: language, numbers, and the unit of weights; text is 13 units high in each.
 *
 * @param isHeaded whether the title is drawn, beside being told to those who cannot see
 * @param language one without a file of words is spoken to in English
 * @param numbers how a number is written
 * @param weights unit in which weights are drawn and told; all that is handed in stays in kg
 */
public record PictureForm(
        int width, int height, boolean isHeaded, Locale language, Numbers numbers, WeightUnit weights) {
    private static final Numbers ENGLISH_NUMBERS =
            (value, decimals) -> String.format(Locale.ENGLISH, "%,." + decimals + "f", value);
    private static final WeightUnit KG = new WeightUnit("kg", 1);

    /** In a page read on a telephone too: still to be read at 300 points of width; no heading of its own. */
    public static final PictureForm PAGE = new PictureForm(440, 330, false, Locale.ENGLISH, ENGLISH_NUMBERS, KG);

    /** A file that stands for itself, with its heading. */
    public static final PictureForm FILE = new PictureForm(760, 400, true, Locale.ENGLISH, ENGLISH_NUMBERS, KG);

    /** How a number is written for whoever reads. */
    @FunctionalInterface
    public interface Numbers {
        String text(double value, int decimals);
    }

    /**
     * A unit of weight.
     *
     * @param name as it stands at an axis
     * @param unitKg kg of one of it, above 0
     */
    public record WeightUnit(String name, double unitKg) {
        public WeightUnit {
            if (!(unitKg > 0)) {
                throw new IllegalArgumentException("unitKg (" + unitKg + ") must be above 0");
            }
        }

        /** So many kg in this unit. */
        double of(double kg) {
            return kg / unitKg;
        }
    }

    /** The same in another language, with numbers as its readers write them. */
    public PictureForm in(Locale language, Numbers numbers) {
        return new PictureForm(width, height, isHeaded, language, numbers, weights);
    }

    /** The same with weights in another unit. */
    public PictureForm withWeightsIn(WeightUnit unit) {
        return new PictureForm(width, height, isHeaded, language, numbers, unit);
    }

    Words words() {
        return Words.in(language);
    }

    String weight(double kg) {
        return numbers.text(weights.of(kg), 0);
    }
}
