package org.pailbook.lactation.sentence;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Something said to people: a code, and the values for the places of its text.
 *
 * @param code what is said
 * @param values in the order of the places: whole numbers, dates, months, texts as recorded, {@link Amount}s, {@link #WEIGHT_UNIT}, further
 *     sentences, or a list of them
 */
public record Sentence(SentenceCode code, List<Object> values) {
    /** Stands for the unit of weights that {@link Amount#weight} leaves out. */
    public static final WeightUnit WEIGHT_UNIT = WeightUnit.KG;

    private static final String BETWEEN = "; ";

    public Sentence {
        values = List.copyOf(values);
    }

    /** The unit of weights, where it stands by itself. */
    public enum WeightUnit {
        KG
    }

    public static Sentence of(SentenceCode code, Object... values) {
        return new Sentence(code, List.of(values));
    }

    /** A text that has no code: names as recorded, numbers, formulas. */
    public static Sentence verbatim(String text) {
        return of(SentenceCode.VERBATIM, text);
    }

    /** A number by itself. */
    public static Sentence verbatim(Amount amount) {
        return of(SentenceCode.VERBATIM, amount);
    }

    /** In English. */
    public String text() {
        return in(code.english(), Sentence::plain);
    }

    /** Another text with its places, {@code %1$s}, filled; {@code %%} is a per cent sign, and a place without a value stays as it is. */
    public String in(String template, Function<Object, String> shown) {
        StringBuilder text = new StringBuilder(template.length() + 32);
        int at = 0;
        while (at < template.length()) {
            char sign = template.charAt(at);
            if (sign == '%' && template.startsWith("%%", at)) {
                text.append('%');
                at += 2;
            } else if (sign == '%' && isPlace(template, at)) {
                text.append(shown.apply(values.get(template.charAt(at + 1) - '1')));
                at += 4;
            } else {
                text.append(sign);
                at++;
            }
        }
        return text.toString();
    }

    private boolean isPlace(String template, int at) {
        return template.startsWith("$s", at + 2)
                && template.charAt(at + 1) >= '1'
                && template.charAt(at + 1) - '1' < values.size();
    }

    private static String plain(Object value) {
        if (value instanceof Sentence sentence) {
            return sentence.text();
        }
        if (value instanceof List<?> list) {
            return joined(list, Sentence::plain);
        }
        if (value instanceof Amount amount) {
            return amount.text();
        }
        if (value instanceof Month month) {
            return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
        }
        return value instanceof WeightUnit ? "kg" : value.toString();
    }

    /** Several of them one after the other. */
    public static String joined(List<?> list, Function<Object, String> shown) {
        return list.stream().map(one -> shown.apply(one)).collect(Collectors.joining(BETWEEN));
    }
}
