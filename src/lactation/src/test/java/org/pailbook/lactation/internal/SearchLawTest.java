package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Searches along one coefficient, and the incomplete gamma function, on functions whose answer is known. */
class SearchLawTest {

    private static ProfileSearch.Profile profile(DoubleUnaryOperator rss, DoubleUnaryOperator slope) {
        return new ProfileSearch.Profile() {
            @Override
            public double rss(double coefficient) {
                return rss.applyAsDouble(coefficient);
            }

            @Override
            public double slope(double coefficient) {
                return slope.applyAsDouble(coefficient);
            }
        };
    }

    @Test
    void anInnerMinimumIsFoundToTheLastDigits() {
        // (ln x - ln 0.03)^2
        ProfileSearch.Profile bowl = profile(x -> Math.pow(Math.log(x / 0.03), 2), x -> 2 * Math.log(x / 0.03) / x);

        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, bowl).orElseThrow()).isCloseTo(0.03, Offset.offset(1e-13));
    }

    @Test
    void ofTwoMinimaTheLowerIsTaken() {
        // double well in ln x at 0.01 and 0.3, tilted towards the second
        DoubleUnaryOperator u = x -> Math.log(x / 0.01);
        double w = Math.log(30);
        ProfileSearch.Profile wells = profile(
                x -> Math.pow(u.applyAsDouble(x) * (u.applyAsDouble(x) - w), 2) - 0.5 * u.applyAsDouble(x),
                x -> (2 * u.applyAsDouble(x) * (u.applyAsDouble(x) - w) * (2 * u.applyAsDouble(x) - w) - 0.5) / x);

        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, wells).orElseThrow()).isBetween(0.29, 0.32);
    }

    @Test
    void aMinimumJustOutsideTheRangeIsNone() {
        ProfileSearch.Profile above = profile(x -> Math.pow(Math.log(x / 1.02), 2), x -> 2 * Math.log(x / 1.02) / x);
        ProfileSearch.Profile below =
                profile(x -> Math.pow(Math.log(x / 9.8e-5), 2), x -> 2 * Math.log(x / 9.8e-5) / x);

        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, above)).isEmpty();
        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, below)).isEmpty();
    }

    @Test
    void theGridRunsFromEndToEnd() {
        List<Double> seen = new ArrayList<>();
        ProfileSearch.innerMinimum(
                1e-4,
                1,
                5,
                profile(
                        x -> {
                            seen.add(x);
                            return x;
                        },
                        x -> 1));

        assertThat(seen).hasSize(5);
        double[] expected = {1e-4, 1e-3, 1e-2, 1e-1, 1};
        for (int i = 0; i < expected.length; i++) {
            assertThat(seen.get(i)).isCloseTo(expected[i], Offset.offset(1e-12));
        }
    }

    @Test
    void aProfileThatOnlyFallsTowardsAnEndHasNoMinimum() {
        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, profile(x -> x, x -> 1)))
                .isEmpty();
        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, profile(x -> -x, x -> -1)))
                .isEmpty();
        assertThat(ProfileSearch.innerMinimum(1e-4, 1, 93, profile(x -> Double.NaN, x -> Double.NaN)))
                .isEmpty();
    }

    @Test
    void rootsAreFoundAndEndsThatAreRootsCount() {
        assertThat(RootSearch.between(0, 2, x -> x * x - 2).orElseThrow())
                .isCloseTo(Math.sqrt(2), Offset.offset(1e-14));
        assertThat(RootSearch.between(0, 2, x -> 2 - x * x).orElseThrow())
                .isCloseTo(Math.sqrt(2), Offset.offset(1e-14));
        assertThat(RootSearch.between(1, 2, x -> x - 1)).hasValue(1);
        assertThat(RootSearch.between(1, 2, x -> x - 2)).hasValue(2);
        assertThat(RootSearch.between(1, 2, x -> x)).isEmpty();
        assertThat(RootSearch.between(1, 2, x -> -x)).isEmpty();
        assertThat(RootSearch.between(1, 2, x -> Double.NaN)).isEmpty();
    }

    @Test
    void incompleteGammaOfWholeShapesIsElementary() {
        // gamma(1, x) = 1 - exp(-x); gamma(2, x) = 1 - (1 + x) exp(-x); gamma(3, inf) = 2
        assertThat(IncompleteGamma.lower(1, 0.7)).isCloseTo(1 - Math.exp(-0.7), Offset.offset(1e-14));
        assertThat(IncompleteGamma.lower(2, 3)).isCloseTo(1 - 4 * Math.exp(-3), Offset.offset(1e-13));
        assertThat(IncompleteGamma.lower(3, 100)).isCloseTo(2, Offset.offset(1e-12));
        assertThat(IncompleteGamma.lower(1.5, 0)).isEqualTo(0);
    }
}
