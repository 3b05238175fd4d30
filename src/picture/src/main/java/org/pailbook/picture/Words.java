package org.pailbook.picture;

import java.util.Locale;
import java.util.ResourceBundle;

/** The words in the pictures, from one file, so that another language is another file. */
final class Words {
    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("org.pailbook.picture.words", Locale.ENGLISH);

    private Words() {}

    /** @param values for the places of the text, as {@link String#format} takes them */
    static String of(String key, Object... values) {
        return String.format(Locale.ENGLISH, BUNDLE.getString(key), values);
    }
}
