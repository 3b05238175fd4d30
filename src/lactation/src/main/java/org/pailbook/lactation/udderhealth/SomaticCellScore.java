package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.TestDay;

/**
 * The somatic cell score: {@code SCS = log2(SCC / 100) + 3}, SCC in 1,000 cells per mL. Each step of 1 doubles the count; 200 gives 4.
 *
 * <p>Counts are averaged over tests or cows as scores, because one high count outweighs many low ones in a plain mean. The score is kept
 * unrounded and uncut; the US scale shows it cut to 0 to 9. A count of zero has no score. A score of 5 or more suggests, and does not
 * prove, an infection: culture and the veterinarian decide.
 *
 * @see "USDA-ARS: SCC = 100 x 2^(SCS - 3), in 1,000 cells per mL (formula read; original by Ali and Shook 1980, from memory)"
 */
public final class SomaticCellScore implements PublishedMethod {
    public static final SomaticCellScore SCS = new SomaticCellScore();

    private static final double LN_2 = Math.log(2);

    private SomaticCellScore() {}

    /**
     * The score of a count.
     *
     * @param sccThousandPerMl somatic cells, 1,000 per mL, above 0
     * @throws IllegalArgumentException if the count is not above 0 or not finite
     */
    public static double score(double sccThousandPerMl) {
        if (!(sccThousandPerMl > 0 && sccThousandPerMl < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "sccThousandPerMl (" + sccThousandPerMl + ") must be above 0 and finite: others have no score");
        }
        return Math.log(sccThousandPerMl / 100) / LN_2 + 3;
    }

    /** The count of a score, 1,000 cells per mL; of a mean of scores, the geometric mean of the counts. */
    public static double sccThousandPerMl(double score) {
        return 100 * Math.pow(2, score - 3);
    }

    /** The score of one test day; no value without a count or with a count of zero. */
    public Figure ofTestDay(TestDay test, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "score", asOf)
                .noInterval("a conversion; its error is that of the count")
                .input(UsedInput.used("test-day", test.date()));
        OptionalDouble scc = test.sccThousandPerMl();
        Finding problem = problem(test);
        if (problem != null) {
            figure.finding(problem);
        }
        if (scc.isPresent() && scc.getAsDouble() > 0) {
            double score = score(scc.getAsDouble());
            figure.value(score)
                    .explanation(new Explanation(List.of(new Explanation.Part(
                            "log2(" + Rounding.halfUp(scc.getAsDouble(), 1) + " / 100) + 3", score))));
        }
        return figure.build();
    }

    /**
     * The plain mean of the scores of several tests, of one cow or of many. Tests without a count, and counts of zero, take no part and
     * are named; no value if none is left.
     */
    public Figure meanOf(List<TestDay> tests, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "score", asOf)
                .noInterval("a mean of the scores measured; nothing is claimed of other days");
        List<TestDay> scored = new ArrayList<>();
        for (TestDay test : tests) {
            Finding problem = problem(test);
            boolean hasScore = test.sccThousandPerMl().orElse(0) > 0;
            if (hasScore) {
                scored.add(test);
                figure.input(UsedInput.used("test-day", test.date()));
                if (problem != null) {
                    figure.finding(problem);
                }
            } else {
                figure.input(UsedInput.leftOut(
                        "test-day", test.date(), problem.code().code()));
            }
        }
        if (scored.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.SCC_NEEDED).withField("sccThousandPerMl"))
                    .build();
        }
        List<Explanation.Part> parts = new ArrayList<>();
        for (TestDay test : scored) {
            double score = score(test.sccThousandPerMl().getAsDouble());
            parts.add(new Explanation.Part(
                    test.date() + ": score " + Rounding.halfUp(score, 3) + " / " + scored.size(),
                    score / scored.size()));
        }
        Explanation explanation = new Explanation(parts);
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    /** What keeps a test from having a score, or makes its score doubtful; null if nothing does. */
    private static Finding problem(TestDay test) {
        OptionalDouble scc = test.sccThousandPerMl();
        if (scc.isEmpty()) {
            return Finding.on(test.date(), FindingCode.SCC_NEEDED).withField("sccThousandPerMl");
        }
        double count = scc.getAsDouble();
        if (count < 0) {
            return Finding.on(test.date(), FindingCode.VALUE_IMPOSSIBLE)
                    .withField("sccThousandPerMl")
                    .withSeen(Double.toString(count))
                    .withExpected("0 or more");
        }
        if (count == 0) {
            return Finding.on(test.date(), FindingCode.SCC_ZERO).withField("sccThousandPerMl");
        }
        if (count < 1) {
            return Finding.on(test.date(), FindingCode.SCC_BELOW_DETECTION)
                    .withField("sccThousandPerMl")
                    .withSeen(Double.toString(count))
                    .withExpected("1 or more");
        }
        return null;
    }

    @Override
    public String id() {
        return "scs-usda";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "USDA Agricultural Research Service",
                1994,
                "definition of the somatic cell score, SCC = 100 x 2^(SCS - 3); year from memory",
                HowKnown.READ);
    }
}
