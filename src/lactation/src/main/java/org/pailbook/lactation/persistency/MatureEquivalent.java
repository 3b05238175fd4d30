package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;

/**
 * A yield as a mature cow would have given it: yield times a factor for the parity. Only with factors of the herd's own or the user's own;
 * without one for her parity there is no value.
 *
 * <p>Season and region are not in it, and the factor carries the error of what it was learned from.
 */
public final class MatureEquivalent implements PublishedMethod {
    private final ParityFactors factors;

    private MatureEquivalent(ParityFactors factors) {
        this.factors = factors;
    }

    public static MatureEquivalent by(ParityFactors factors) {
        return new MatureEquivalent(factors);
    }

    /**
     * @param yieldKg milk, fat or protein of a lactation; without a value there is none here
     * @param parity of that lactation, 1 or more
     */
    public Figure of(Figure yieldKg, int parity, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, yieldKg.unit(), asOf)
                .noInterval("the error of the factor is not known")
                .inputs(yieldKg.inputs())
                .findings(yieldKg.findings());
        OptionalDouble factor = factors.of(parity);
        if (factor.isEmpty()) {
            figure.finding(Finding.of(FindingCode.NO_FACTOR)
                    .withField("parity")
                    .withSeen("parity " + parity)
                    .withExpected("one of " + factors.factorByParity().keySet()));
        }
        if (factor.isEmpty() || yieldKg.value().isEmpty()) {
            return figure.build();
        }
        double value = yieldKg.orThrow() * factor.getAsDouble();
        String words = Rounding.halfUp(yieldKg.orThrow(), 1) + " " + yieldKg.unit() + " x "
                + Rounding.halfUp(factor.getAsDouble(), 4) + " (" + factors.source() + ")";
        return figure.value(value)
                .explanation(new Explanation(List.of(new Explanation.Part(words, value))))
                .build();
    }

    @Override
    public String id() {
        return "mature-equivalent-parity";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation("Pailbook", 2026, "yield x parity factor; factors: " + factors.source(), HowKnown.OURS);
    }
}
