package org.pailbook.records;

import java.util.Enumeration;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A made-up translation, for tests: the English with every run of letters between marks, so that what came from elsewhere stands out. */
public abstract class MarkedWords extends ResourceBundle {
    /** A language code free for private use. */
    public static final String LANGUAGE = "qaa";

    static final char OPEN = '\u27e6';
    static final char CLOSE = '\u27e7';
    private static final Pattern PLACE = Pattern.compile("%(?:[0-9]\\$)?[-+,.0-9]*[sd]|%%");
    private static final Pattern LETTERS = Pattern.compile("\\p{L}(?:.*\\p{L})?", Pattern.DOTALL);

    private final ResourceBundle english;

    protected MarkedWords(String name) {
        english = ResourceBundle.getBundle(
                name,
                Locale.ROOT,
                getClass().getClassLoader(),
                Control.getNoFallbackControl(Control.FORMAT_PROPERTIES));
    }

    @Override
    protected Object handleGetObject(String key) {
        if (!english.containsKey(key) || key.equals("direction")) {
            return null;
        }
        String text = english.getString(key);
        StringBuilder marked = new StringBuilder();
        Matcher place = PLACE.matcher(text);
        int at = 0;
        while (place.find()) {
            marked.append(marked(text.substring(at, place.start()))).append(place.group());
            at = place.end();
        }
        return marked.append(marked(text.substring(at))).toString();
    }

    private static String marked(String between) {
        return LETTERS.matcher(between).replaceFirst(found -> Matcher.quoteReplacement(OPEN + found.group() + CLOSE));
    }

    @Override
    public Enumeration<String> getKeys() {
        return english.getKeys();
    }
}
