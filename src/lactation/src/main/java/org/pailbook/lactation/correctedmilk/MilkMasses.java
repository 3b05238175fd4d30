package org.pailbook.lactation.correctedmilk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.TestDay;

/**
 * Milk and the masses in it, all in kg and over the same time; what a formula weighs.
 *
 * @param milkKg milk, absent if not weighed
 * @param fatKg fat
 * @param proteinKg protein
 * @param lactoseKg lactose
 * @param solidsNotFatKg everything dry that is not fat
 */
record MilkMasses(
        OptionalDouble milkKg,
        OptionalDouble fatKg,
        OptionalDouble proteinKg,
        OptionalDouble lactoseKg,
        OptionalDouble solidsNotFatKg) {

    /** Masses are rounded up by scales and laboratories: this much more than the whole is not yet impossible. */
    private static final double ROUNDING_SHARE = 1e-9;

    MilkMasses {
        requireFinite("milkKg", milkKg);
        requireFinite("fatKg", fatKg);
        requireFinite("proteinKg", proteinKg);
        requireFinite("lactoseKg", lactoseKg);
        requireFinite("solidsNotFatKg", solidsNotFatKg);
    }

    static MilkMasses of(TestDay test) {
        return new MilkMasses(
                test.milkKg(),
                kgOf(test.milkKg(), test.fatPct()),
                kgOf(test.milkKg(), test.proteinPct()),
                kgOf(test.milkKg(), test.lactosePct()),
                OptionalDouble.empty());
    }

    /** @throws IllegalArgumentException if a mass is not finite */
    static MilkMasses ofYield(double milkKg, OptionalDouble fatKg, OptionalDouble proteinKg, OptionalDouble lactoseKg) {
        return new MilkMasses(OptionalDouble.of(milkKg), fatKg, proteinKg, lactoseKg, OptionalDouble.empty());
    }

    private static void requireFinite(String name, OptionalDouble kg) {
        if (kg.isPresent() && !Double.isFinite(kg.getAsDouble())) {
            throw new IllegalArgumentException(name + " (" + kg.getAsDouble() + ") must be finite");
        }
    }

    private static OptionalDouble kgOf(OptionalDouble milkKg, OptionalDouble pct) {
        return milkKg.isPresent() && pct.isPresent()
                ? OptionalDouble.of(milkKg.getAsDouble() * pct.getAsDouble() / 100)
                : OptionalDouble.empty();
    }

    /** Fat in the milk, percent by mass. */
    OptionalDouble fatPct() {
        return milkKg.orElse(0) > 0 && fatKg.isPresent()
                ? OptionalDouble.of(100 * fatKg.getAsDouble() / milkKg.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * Adds value, explanation and findings to a figure. Every part that the weights use must be there, but lactose, for which the
     * formula's own standard stands in if it has one.
     *
     * @param assumedLactosePct what stands in for lactose that was not measured; empty if nothing may
     */
    void weigh(MassWeights weights, OptionalDouble assumedLactosePct, Figure.Builder figure) {
        List<Finding> blocking = impossible();
        Weighing sum = new Weighing(weights.divisor());
        sum.add(Component.MILK, milkKg, weights.perMilkKg()).ifPresent(blocking::add);
        sum.add(Component.FAT, fatKg, weights.perFatKg()).ifPresent(blocking::add);
        sum.add(Component.PROTEIN, proteinKg, weights.perProteinKg()).ifPresent(blocking::add);
        OptionalDouble lactose = lactoseKg;
        if (weights.perLactoseKg() != 0 && lactose.isEmpty() && assumedLactosePct.isPresent() && milkKg.isPresent()) {
            lactose = kgOf(milkKg, assumedLactosePct);
            figure.finding(Finding.of(FindingCode.LACTOSE_ASSUMED)
                    .withField("lactosePct")
                    .withExpected("measured; " + assumedLactosePct.getAsDouble() + " % stood in"));
        }
        sum.add(Component.LACTOSE, lactose, weights.perLactoseKg()).ifPresent(blocking::add);
        sum.add(Component.SOLIDS_NOT_FAT, solidsNotFatKg, weights.perSolidsNotFatKg())
                .ifPresent(blocking::add);
        if (blocking.isEmpty()) {
            figure.value(sum.kg).explanation(sum::explanation);
        }
        figure.findings(blocking);
    }

    /** Weights below zero, and parts heavier than the milk. */
    private List<Finding> impossible() {
        List<Finding> findings = new ArrayList<>();
        double partsKg = 0;
        List<OptionalDouble> parts = List.of(fatKg, proteinKg, lactoseKg);
        List<String> names = List.of("fatKg", "proteinKg", "lactoseKg");
        for (int i = 0; i < parts.size(); i++) {
            double partKg = parts.get(i).orElse(0);
            partsKg += partKg;
            if (partKg < 0) {
                findings.add(below(names.get(i), partKg));
            }
        }
        // solids-not-fat hold protein and lactose
        double dryKg = Math.max(partsKg, fatKg.orElse(0) + solidsNotFatKg.orElse(0));
        if (solidsNotFatKg.orElse(0) < 0) {
            findings.add(below("solidsNotFatKg", solidsNotFatKg.getAsDouble()));
        }
        if (milkKg.isPresent() && milkKg.getAsDouble() < 0) {
            findings.add(below("milkKg", milkKg.getAsDouble()));
        } else if (milkKg.isPresent() && dryKg > milkKg.getAsDouble() * (1 + ROUNDING_SHARE)) {
            findings.add(Finding.of(FindingCode.VALUE_IMPOSSIBLE)
                    .withSeen(Rounding.halfUp(dryKg, 3) + " kg of fat and other solids")
                    .withExpected("at most the milk, " + Rounding.halfUp(milkKg.getAsDouble(), 3) + " kg"));
        }
        return findings;
    }

    private static Finding below(String field, double kg) {
        return Finding.of(FindingCode.VALUE_IMPOSSIBLE)
                .withField(field)
                .withSeen(kg + " kg")
                .withExpected("0 kg or more");
    }

    /** What a formula may weigh: its name in an explanation, its field on the wire, and the finding when it is not there. */
    private enum Component {
        MILK("milk", "milkKg", FindingCode.MILK_NEEDED),
        FAT("fat", "fatPct", FindingCode.FAT_NEEDED),
        PROTEIN("protein", "proteinPct", FindingCode.PROTEIN_NEEDED),
        LACTOSE("lactose", "lactosePct", FindingCode.LACTOSE_NEEDED),
        SOLIDS_NOT_FAT("solids-not-fat", "solidsNotFatKg", FindingCode.SOLIDS_NOT_FAT_NEEDED);

        private final String words;
        private final String field;
        private final FindingCode whenMissing;

        Component(String words, String field, FindingCode whenMissing) {
            this.words = words;
            this.field = field;
            this.whenMissing = whenMissing;
        }
    }

    /** Sums up the parts. */
    private static final class Weighing {
        private final double divisor;
        private final List<Weighed> parts = new ArrayList<>();
        private double kg;

        private record Weighed(Component component, double kg, double weight, double amount) {}

        Weighing(double divisor) {
            this.divisor = divisor;
        }

        Optional<Finding> add(Component component, OptionalDouble partKg, double weight) {
            if (partKg.isEmpty()) {
                // every formula needs the milk: without it nobody can say whether the parts are possible
                return weight != 0 || component == Component.MILK
                        ? Optional.of(Finding.of(component.whenMissing).withField(component.field))
                        : Optional.empty();
            }
            if (weight != 0) {
                double amount = weight * partKg.getAsDouble() / divisor;
                parts.add(new Weighed(component, partKg.getAsDouble(), weight, amount));
                kg += amount;
            }
            return Optional.empty();
        }

        Explanation explanation() {
            String over = divisor == 1 ? "" : " / " + Rounding.halfUp(divisor, 5);
            return new Explanation(parts.stream()
                    .map(part -> new Explanation.Part(
                            part.component().words + ": " + Rounding.halfUp(part.weight(), 4) + over + " x "
                                    + Rounding.halfUp(part.kg(), 4) + " kg",
                            part.amount()))
                    .toList());
        }
    }
}
