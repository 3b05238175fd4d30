package org.pailbook.records.page;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;

/** The words of the pages, from one file; in templates {@code {t:word('key')}}. */
@TemplateExtension(namespace = "t")
final class PageWords {
    private static final ResourceBundle BUNDLE =
            ResourceBundle.getBundle("org.pailbook.records.page.words", Locale.ENGLISH);

    private PageWords() {}

    static String word(String key) {
        return BUNDLE.getString(key);
    }

    /** A word, if there is one under that key. */
    static Optional<String> find(String key) {
        return BUNDLE.containsKey(key) ? Optional.of(BUNDLE.getString(key)) : Optional.empty();
    }

    /** Keys of the words the pages' script uses, in order. */
    static List<String> scriptWords() {
        return BUNDLE.keySet().stream()
                .filter(key -> key.startsWith("script."))
                .sorted()
                .toList();
    }

    /** A text with a value in it. */
    static String with(String key, Object value) {
        return String.format(Locale.ENGLISH, BUNDLE.getString(key), value);
    }

    static String with(String key, Object first, Object second) {
        return String.format(Locale.ENGLISH, BUNDLE.getString(key), first, second);
    }
}
