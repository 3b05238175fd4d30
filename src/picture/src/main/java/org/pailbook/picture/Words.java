package org.pailbook.picture;

import java.util.Locale;
import java.util.ResourceBundle;

/** The words in the pictures in one language, from one file: another language is another file, and what it lacks is said in English. */
final class Words {
    private static final ResourceBundle.Control NO_OTHER =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT);

    private final ResourceBundle bundle;

    private Words(ResourceBundle bundle) {
        this.bundle = bundle;
    }

    static Words in(Locale language) {
        return new Words(ResourceBundle.getBundle("org.pailbook.picture.words", language, NO_OTHER));
    }

    /** @param values for the places of the text, as {@link String#format} takes them */
    String of(String key, Object... values) {
        return String.format(Locale.ENGLISH, bundle.getString(key), values);
    }
}
