package org.pailbook.lactation.curve;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One parameter of a lactation curve.
 *
 * @param name as in the paper
 * @param value in {@code unit}
 * @param unit such as {@code kg/d}, {@code 1/d}; {@code 1} for a pure number
 * @param standardError in the same unit; empty for a given curve, for a parameter held fixed, and for a fit through as many points as
 *     parameters
 */
public record CurveParameter(String name, double value, String unit, OptionalDouble standardError) {

    public CurveParameter {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(standardError, "standardError");
    }

    static CurveParameter given(String name, double value, String unit) {
        return new CurveParameter(name, value, unit, OptionalDouble.empty());
    }

    CurveParameter withStandardError(double error) {
        return new CurveParameter(name, value, unit, OptionalDouble.of(error));
    }
}
