package org.pailbook.lactation.figure;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.method.Measure;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * A measure of a herd as it came out: what was counted over what, and the figure. A denominator of zero has no figure, never a zero.
 *
 * @param measure what it is, with both counts in words
 * @param numerator as defined by the measure
 * @param denominator as defined by the measure
 */
public record Measured(Measure measure, double numerator, double denominator, Figure figure) {
    private static final double PERCENT = 100;

    public Measured {
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(figure, "figure");
    }

    /** A share of a count, percent, with Wilson's interval. A blocking finding takes the figure and leaves the counts. */
    public static Measured share(Measure measure, Proportion counted, LocalDate asOf, List<Finding> findings) {
        Figure.Builder figure = Figure.of(measure, "%", asOf).findings(findings);
        if (counted.outOf() == 0) {
            figure.finding(nothing(measure));
        } else if (findings.stream().noneMatch(Measured::blocks)) {
            Interval share = counted.wilson95();
            double percent = PERCENT * counted.share();
            figure.value(percent)
                    .interval(new Interval(share.coverageShare(), PERCENT * share.low(), PERCENT * share.high()))
                    .explanation(new Explanation(List.of(new Explanation.Part(
                            Sentence.of(SentenceCode.SHARE_OF, counted.count(), counted.outOf()), percent))));
            if (counted.isFew()) {
                figure.finding(Finding.of(FindingCode.SMALL_NUMBER)
                        .withSeen(SentenceCode.OF, counted.count(), counted.outOf()));
            }
        }
        return new Measured(measure, counted.count(), counted.outOf(), figure.build());
    }

    /** One sum divided by another, times a factor: means, and rates for a year. */
    public static Measured ratio(
            Measure measure, double numerator, double denominator, double times, String unit, LocalDate asOf) {
        return ratio(measure, numerator, denominator, times, unit, asOf, List.of());
    }

    /** The same with findings; a blocking one takes the figure and leaves the sums. */
    public static Measured ratio(
            Measure measure,
            double numerator,
            double denominator,
            double times,
            String unit,
            LocalDate asOf,
            List<Finding> findings) {
        Figure.Builder figure = Figure.of(measure, unit, asOf)
                .noInterval(SentenceCode.OF_THE_COWS_THERE_ARE)
                .findings(findings);
        if (denominator == 0) {
            figure.finding(nothing(measure));
        } else if (findings.stream().noneMatch(Measured::blocks)) {
            double value = numerator / denominator * times;
            String words = Rounding.halfUp(numerator, 1) + " / " + Rounding.halfUp(denominator, 1)
                    + (times == 1 ? "" : " x " + Rounding.halfUp(times, 2));
            figure.value(value).explanation(new Explanation(List.of(new Explanation.Part(words, value))));
        }
        return new Measured(measure, numerator, denominator, figure.build());
    }

    private static boolean blocks(Finding finding) {
        return finding.severity() == Severity.BLOCKS;
    }

    private static Finding nothing(Measure measure) {
        return Finding.of(FindingCode.NOTHING_TO_COUNT).withExpected(measure.denominator());
    }
}
