package org.pailbook.picture;

import java.util.Locale;

/**
 * How large a picture is drawn before it is scaled, and in which language its words are; text is 13 units high in each.
 *
 * @param isHeaded whether the title is drawn, beside being told to those who cannot see
 * @param language one without a file of words is spoken to in English
 */
public record PictureForm(int width, int height, boolean isHeaded, Locale language) {
    /** In a page read on a telephone too: still to be read at 300 points of width; no heading of its own. */
    public static final PictureForm PAGE = new PictureForm(440, 330, false, Locale.ENGLISH);

    /** A file that stands for itself, with its heading. */
    public static final PictureForm FILE = new PictureForm(760, 400, true, Locale.ENGLISH);

    /** The same in another language. */
    public PictureForm in(Locale language) {
        return new PictureForm(width, height, isHeaded, language);
    }

    Words words() {
        return Words.in(language);
    }
}
