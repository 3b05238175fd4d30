package org.pailbook.records.wire;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What is absent in the library is null in an answer's record, so that it is left out of the JSON. */
public final class OrNull {
    private OrNull() {}

    public static Double of(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    /** JSON has no NaN and no infinity; a spread that overflowed is as good as none. */
    public static Double ofFinite(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? (Double) value.getAsDouble() : null;
    }

    public static Integer of(OptionalInt value) {
        return value.isPresent() ? (Integer) value.getAsInt() : null;
    }
}
