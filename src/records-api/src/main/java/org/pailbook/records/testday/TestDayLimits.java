package org.pailbook.records.testday;

import java.util.List;
import java.util.function.Function;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.FindingView;

/**
 * Beyond which values a test day is refused (cannot be) or taken with a warning (is unusual). All limits are ours; the library
 * applies ICAR's range limits again when it computes.
 */
final class TestDayLimits {
    /** One measured value and its four limits. */
    private record Limit(
            String member,
            String code,
            String unit,
            Function<TestDayRow, Double> value,
            double least,
            double most,
            double usuallyLeast,
            double usuallyMost) {}

    private static final List<Limit> LIMITS = List.of(
            new Limit("milkKg", "milk", "kg per day", row -> row.milkKg, 0, 150, 1, 80),
            new Limit("fatPct", "fat", "%", row -> row.fatPct, 0, 15, 2, 7),
            new Limit("proteinPct", "protein", "%", row -> row.proteinPct, 0, 15, 2.2, 5.5),
            new Limit("lactosePct", "lactose", "%", row -> row.lactosePct, 0, 10, 3.5, 5.5),
            new Limit("sccThousandPerMl", "scc", "thousand per mL", row -> row.sccThousandPerMl, 0, 20_000, 0, 9_999));

    private TestDayLimits() {}

    static void check(Posted<TestDayRow> posted) {
        for (Limit limit : LIMITS) {
            Double value = limit.value.apply(posted.record());
            if (value == null) {
                continue;
            }
            if (value < limit.least || value > limit.most) {
                posted.add(FindingView.error(
                                refusalCode(limit, value), posted.pointer(limit.member), refusal(limit, value))
                        .seen(text(value))
                        .expecting(text(limit.least) + " to " + text(limit.most) + " " + limit.unit));
            } else if (value < limit.usuallyLeast || value > limit.usuallyMost) {
                posted.add(FindingView.warning(
                                limit.code + "-unusual",
                                posted.pointer(limit.member),
                                "is unusual; kept and used, please check")
                        .seen(text(value))
                        .expecting(text(limit.usuallyLeast) + " to " + text(limit.usuallyMost) + " " + limit.unit));
            }
        }
    }

    private static String refusalCode(Limit limit, double value) {
        return limit.code.equals("scc") && value > limit.most ? "scc-unit-suspect" : limit.code + "-out-of-range";
    }

    private static String refusal(Limit limit, double value) {
        if (value < limit.least) {
            return "must not be negative";
        }
        return switch (limit.code) {
            case "scc" -> "is too high for thousand cells per mL; was it cells per mL? It is never divided here";
            case "milk" -> "is too high for kg in 24 hours; was it pounds, or the milk of several days?";
            default -> "is too high for percent by mass; was it g per litre?";
        };
    }

    private static String text(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
