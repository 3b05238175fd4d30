package org.pailbook.records.page;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The words of the pages in the reader's language, from one file; in templates {@code {t:word('key')}}. */
@TemplateExtension(namespace = "t")
final class PageWords {
    private PageWords() {}

    static String word(String key) {
        return PageLanguage.current().word(key);
    }

    /** A word, if there is one under that key. */
    static Optional<String> find(String key) {
        return PageLanguage.current().keys().contains(key) ? Optional.of(word(key)) : Optional.empty();
    }

    /** Keys of the words the pages' script uses, in order. */
    static List<String> scriptWords() {
        return PageLanguage.current().keys().stream()
                .filter(key -> key.startsWith("script."))
                .sorted()
                .toList();
    }

    /** A text with a value in it. */
    static String with(String key, Object value) {
        return String.format(Locale.ENGLISH, word(key), value);
    }

    static String with(String key, Object first, Object second) {
        return String.format(Locale.ENGLISH, word(key), first, second);
    }

    /** Language of the words, for {@code lang}. */
    static String lang() {
        return PageLanguage.current().tag();
    }
}
