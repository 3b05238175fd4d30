package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class PolicyIterationPublishedTest {
    private static final int KEEP = 0;
    private static final int REPLACE = 1;

    /** Ages 1 to n; keeping leads to the next age, replacing to age 1, each a stage later; the last age must be replaced. */
    private static PolicyIteration.Solution ages(
            int n, IntToDoubleFunction keep, IntToDoubleFunction replace, double discount) {
        DecisionProcess process = new DecisionProcess(n, 2);
        for (int age = 1; age <= n; age++) {
            if (age < n) {
                process.allow(age - 1, KEEP, keep.applyAsDouble(age));
                process.leadsTo(KEEP, age, discount);
            }
            process.allow(age - 1, REPLACE, replace.applyAsDouble(age));
            process.leadsTo(REPLACE, 0, discount);
        }
        return PolicyIteration.solve(process);
    }

    // Miranda and Fackler (2002), Applied Computational Economics and Finance, 7.6.2, asset replacement; values as in
    // its public output.
    // By hand V1 = (45 + 31.5 + 16.2 - 18.225) / (1 - 0.9^4) = 74.475 / 0.3439
    @Test
    void theAssetThatIsReplacedAtAgeFour() {
        PolicyIteration.Solution best = ages(5, age -> 50 - 2.5 * age - 2.5 * age * age, age -> 50 - 75, 0.9);
        double[] expected = {216.56004653, 190.62227392, 172.91363769, 169.90404187, 169.90404187};
        for (int age = 1; age <= 5; age++) {
            assertThat(best.values()[age - 1]).isCloseTo(expected[age - 1], within(5e-9));
        }
        assertThat(best.values()[0]).isCloseTo(74.475 / 0.3439, within(1e-10));
        assertThat(best.actions()).containsExactly(KEEP, KEEP, KEEP, REPLACE, REPLACE);
        assertThat(best.worth(4, KEEP)).isEmpty();
    }

    // The same authors' teaching model of a cow over 10 lactations (inputs read); values worked from it by value
    // iteration in another program
    @Test
    void theCowThatIsReplacedFromLactationEight() {
        IntToDoubleFunction yield = s -> 150 * (-0.2 * s * s + 2 * s + 8);
        PolicyIteration.Solution best = ages(10, yield, s -> yield.applyAsDouble(s) - 500, 0.9);
        assertThat(best.values()[0]).isCloseTo(17231.743886, within(5e-7));
        assertThat(best.values()[2]).isCloseTo(17592.276403, within(5e-7));
        assertThat(best.values()[7]).isCloseTo(16688.569497, within(5e-7));
        assertThat(best.actions()).containsExactly(KEEP, KEEP, KEEP, KEEP, KEEP, KEEP, KEEP, REPLACE, REPLACE, REPLACE);
        assertThat(best.worth(6, KEEP).orElseThrow() - best.worth(6, REPLACE).orElseThrow())
                .isCloseTo(11.143050, within(5e-7));
    }

    // Three milk levels, layout after Kristensen (1996), Dina Notat 49, figures from memory of it; solved by hand with
    // fractions:
    // with policy (replace, keep, keep) the low level earns 9000 + 0.9 x mean(V), mean(V) = 14920000/123
    @Test
    void threeMilkLevelsOfWhichOnlyTheLowIsReplaced() {
        double[][] keep = {{0.6, 0.3, 0.1}, {0.2, 0.6, 0.2}, {0.1, 0.3, 0.6}};
        double[] earned = {10000, 12000, 14000};
        DecisionProcess process = new DecisionProcess(3, 2);
        for (int level = 0; level < 3; level++) {
            process.allow(level, KEEP, earned[level]);
            for (int next = 0; next < 3; next++) {
                process.leadsTo(KEEP, next, 0.9 * keep[level][next]);
            }
            process.allow(level, REPLACE, earned[level] - 1000);
            for (int next = 0; next < 3; next++) {
                process.leadsTo(REPLACE, next, 0.9 / 3);
            }
        }
        PolicyIteration.Solution best = PolicyIteration.solve(process);
        double[] fortyFirsts = {4845000, 4965000, 5110000};
        double[] gain = {-18250, 38000, 101000};
        for (int level = 0; level < 3; level++) {
            assertThat(best.values()[level]).isCloseTo(fortyFirsts[level] / 41, within(1e-6));
            assertThat(best.worth(level, KEEP).orElseThrow()
                            - best.worth(level, REPLACE).orElseThrow())
                    .isCloseTo(gain[level] / 41, within(1e-6));
        }
        assertThat(best.actions()).containsExactly(REPLACE, KEEP, KEEP);
    }
}
