package org.pailbook.records.page;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.projection.Coverage;

/**
 * A figure with everything that stands behind it, in words.
 *
 * @param name what it is
 * @param value with unit; a dash without one
 * @param interval both ends, or why there are none
 * @param asOf the day it is for
 * @param method its name and version
 * @param source where it is published
 * @param inputs what it was made from
 * @param parts what it was added up from
 * @param warnings what was found
 */
record ShownFigure(
        String name,
        String value,
        String interval,
        String asOf,
        String method,
        String source,
        String inputs,
        List<String> parts,
        List<String> warnings) {
    private static final String KG = "kg";

    static ShownFigure of(String key, Figure figure, int decimals, Shown shown) {
        return named(PageWords.word(key), figure, decimals, shown);
    }

    static ShownFigure named(String name, Figure figure, int decimals, Shown shown) {
        return new ShownFigure(
                name,
                amount(figure.value(), figure.unit(), decimals, shown),
                interval(figure, decimals, shown),
                figure.asOf().toString(),
                PageWords.with("method", figure.method().id(), figure.method().version()),
                figure.method().citation().text(),
                inputs(figure.inputs()),
                figure.explanation().parts().stream()
                        .map(part -> Said.in(part.said(), shown) + ": "
                                + amount(OptionalDouble.of(part.amount()), figure.unit(), decimals, shown))
                        .toList(),
                figure.findings().stream()
                        .map(finding -> Said.of(finding, shown))
                        .distinct()
                        .toList());
    }

    /** Weights, also those of a day ({@code kg/d}), in the unit that was chosen. */
    private static String amount(OptionalDouble value, String unit, int decimals, Shown shown) {
        return isWeight(unit)
                ? shown.weight(value, decimals) + (value.isEmpty() ? "" : unit.substring(KG.length()))
                : Shown.number(value, decimals) + (value.isEmpty() ? "" : "\u00a0" + Said.unit(unit));
    }

    private static boolean isWeight(String unit) {
        return unit.equals(KG) || unit.startsWith(KG + "/");
    }

    private static String interval(Figure figure, int decimals, Shown shown) {
        Optional<Interval> ends = figure.interval(Coverage.EIGHTY_PERCENT.share());
        if (ends.isEmpty()) {
            return figure.saidIntervalNote().map(why -> Said.in(why, shown)).orElse("");
        }
        String both = isWeight(figure.unit())
                ? shown.ends(ends, decimals)
                : PageWords.with(
                        "interval",
                        Shown.number(ends.get().low(), decimals),
                        Shown.number(ends.get().high(), decimals));
        return PageWords.with("interval.80", both);
    }

    private static String inputs(List<UsedInput> inputs) {
        long used = inputs.stream().filter(UsedInput::isUsed).count();
        String text = PageWords.with("inputs.used", used);
        String out = inputs.stream()
                .filter(input -> !input.isUsed())
                .map(input -> input.date() + " (" + Said.whyLeftOut(input) + ")")
                .limit(10)
                .collect(java.util.stream.Collectors.joining(", "));
        return out.isEmpty() ? text : text + " " + PageWords.with("inputs.out", out);
    }
}
