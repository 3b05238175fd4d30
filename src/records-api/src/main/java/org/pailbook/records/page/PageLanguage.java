package org.pailbook.records.page;

import io.quarkus.arc.Arc;
import io.quarkus.arc.Unremovable;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * In which language whoever reads is spoken to, and how numbers are written for them: what the browser asks for, else English. A language is there as
 * soon as its file {@code words_<language>.properties} is; what such a file lacks is said in English.
 */
@RequestScoped
@Unremovable
class PageLanguage {
    private static final String BUNDLE = "org.pailbook.records.page.words";
    private static final ResourceBundle.Control NO_OTHER =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT);
    /** Browsers send a handful. */
    private static final int MOST_ASKED = 8;

    private final RoutingContext routing;
    private ResourceBundle words;
    private boolean hasDecimalComma;

    @Inject
    PageLanguage(RoutingContext routing) {
        this.routing = routing;
    }

    /** That of the request that is being answered. */
    static PageLanguage current() {
        return Arc.container().instance(PageLanguage.class).get();
    }

    /** A key without a word stands for itself: one that was forgotten must not take the page away. */
    String word(String key) {
        return has(key) ? words().getString(key) : key;
    }

    boolean has(String key) {
        return words().containsKey(key);
    }

    Set<String> keys() {
        return words().keySet();
    }

    /** For {@code lang}. */
    String tag() {
        Locale locale = words().getLocale();
        return locale.equals(Locale.ROOT) ? Locale.ENGLISH.toLanguageTag() : locale.toLanguageTag();
    }

    /** A number with its groups of three parted: by a comma, or by a narrow blank where the comma is the decimal sign. */
    String number(double value, int decimals) {
        words();
        String english = String.format(Locale.ENGLISH, "%,." + decimals + "f", value);
        return hasDecimalComma ? english.replace(',', '\u202f').replace('.', ',') : english;
    }

    private ResourceBundle words() {
        if (words == null) {
            List<Locale> asked = asked(routing.request().getHeader("Accept-Language"));
            hasDecimalComma = !asked.isEmpty()
                    && DecimalFormatSymbols.getInstance(asked.get(0)).getDecimalSeparator() == ',';
            words = asked.stream()
                    .map(PageLanguage::in)
                    .filter(bundle -> bundle != null)
                    .findFirst()
                    .orElseGet(() -> ResourceBundle.getBundle(BUNDLE, Locale.ROOT, NO_OTHER));
        }
        return words;
    }

    private static ResourceBundle in(Locale locale) {
        ResourceBundle bundle = ResourceBundle.getBundle(BUNDLE, locale, NO_OTHER);
        boolean isEnglish = bundle.getLocale().equals(Locale.ROOT);
        return isEnglish && !locale.getLanguage().equals(Locale.ENGLISH.getLanguage()) ? null : bundle;
    }

    /** Most wanted first; what makes no sense asks for nothing. */
    private static List<Locale> asked(String header) {
        try {
            return header == null
                    ? List.of()
                    : Locale.LanguageRange.parse(header).stream()
                            .filter(range ->
                                    range.getWeight() > 0 && !range.getRange().startsWith("*"))
                            .limit(MOST_ASKED)
                            .map(range -> Locale.forLanguageTag(range.getRange()))
                            .toList();
        } catch (IllegalArgumentException nonsense) {
            return List.of();
        }
    }
}
