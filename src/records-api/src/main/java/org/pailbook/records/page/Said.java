package org.pailbook.records.page;

import java.math.BigDecimal;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;

/**
 * What the library finds and says, in the words, numbers and unit of whoever reads: looked up by its code, with its values put in. What has no word
 * under its code is said as the library says it, in English.
 */
final class Said {
    private static final String AFTER_DAY = "after-day-";

    private Said() {}

    /** What stands under a code in the words, else the library's English. */
    static String coded(String key, String english) {
        return PageWords.find(key).orElse(english);
    }

    static String in(Sentence sentence, Shown shown) {
        String template =
                coded("sentence." + sentence.code().code(), sentence.code().english());
        return sentence.in(template, value -> value(value, shown));
    }

    private static String value(Object value, Shown shown) {
        if (value instanceof Sentence sentence) {
            return in(sentence, shown);
        }
        if (value instanceof List<?> list) {
            return Sentence.joined(list, one -> value(one, shown));
        }
        if (value instanceof Amount amount) {
            return amount(amount, shown);
        }
        if (value instanceof Month month) {
            return month.getDisplayName(TextStyle.FULL, Locale.forLanguageTag(PageWords.lang()));
        }
        return value instanceof Sentence.WeightUnit ? shown.unitName() : value.toString();
    }

    private static String amount(Amount amount, Shown shown) {
        boolean isTurned = amount.isWeight() && shown.isPounds();
        double value = isTurned ? shown.unit().of(amount.value()) : amount.value();
        String unit = amount.isWeight() ? shown.unitName() : unit(amount.unit());
        return (amount.isSigned() && value >= 0 ? "+" : "")
                + Shown.number(value, decimals(amount, isTurned))
                + (amount.isUnitTold() ? "\u00a0" + unit : "");
    }

    private static int decimals(Amount amount, boolean isTurned) {
        if (amount.decimals() != Amount.ALL) {
            return amount.decimals();
        }
        return isTurned
                ? 1
                : Math.max(
                        0,
                        BigDecimal.valueOf(amount.value()).stripTrailingZeros().scale());
    }

    /** A unit as it is called here. */
    static String unit(String unit) {
        return unit.equals("1000/mL") ? PageWords.word("unit.scc") : coded("unit." + unit, unit);
    }

    /** What a finding of that kind means. */
    static String meaning(FindingCode code) {
        return coded("finding." + code.code(), code.meaning());
    }

    /** A finding with all that is known of it. */
    static String of(Finding finding, Shown shown) {
        return Stream.of(
                        Optional.of(meaning(finding.code())),
                        finding.date().map(day -> PageWords.with("found.day", day)),
                        finding.field().map(name -> PageWords.with("found.field", coded("field." + name, name))),
                        finding.saidSeen().map(seen -> PageWords.with("found.seen", in(seen, shown))),
                        finding.saidExpected().map(expected -> PageWords.with("found.expected", in(expected, shown))))
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    /** Why an input took no part: the code of a finding, or a day after which none do. */
    static String whyLeftOut(UsedInput input) {
        String why = input.whyLeftOut().orElse("");
        return why.startsWith(AFTER_DAY)
                ? PageWords.with("inputs.afterDay", why.substring(AFTER_DAY.length()))
                : coded("finding." + why, why);
    }
}
