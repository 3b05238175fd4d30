package org.pailbook.records.testday;

import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.FindingView;

/** Holds a posted test day against the library's table of limits: impossible values are refused, odd ones taken with a warning. */
final class TestDayLimits {
    private TestDayLimits() {}

    static void check(Posted<TestDayRow> posted) {
        TestDayRow row = posted.record();
        // each is looked at, so that one answer names all
        boolean refused = isImpossible(posted, "milkKg", row.milkKg)
                | isImpossible(posted, "fatPct", row.fatPct)
                | isImpossible(posted, "proteinPct", row.proteinPct)
                | isImpossible(posted, "lactosePct", row.lactosePct)
                | isImpossible(posted, "sccThousandPerMl", row.sccThousandPerMl);
        TestDay test = row.toLibrary();
        // a herd's own limits are never narrower, so they are asked for only if those shipped would warn
        if (!refused && !ValueLimits.PUBLISHED.check(test, BreedGroup.UNKNOWN).isEmpty()) {
            posted.limits().check(test, BreedGroup.UNKNOWN).forEach(finding -> posted.add(warning(posted, finding)));
        }
    }

    private static boolean isImpossible(Posted<TestDayRow> posted, String field, Double value) {
        ValueLimit broken = value == null
                ? null
                : ValueLimits.PUBLISHED.impossible(field, value).orElse(null);
        if (broken == null) {
            return false;
        }
        boolean low = value < broken.least().orElse(Double.NEGATIVE_INFINITY);
        posted.add(FindingView.error(
                        low ? "negative-value" : tooHighCode(field),
                        posted.pointer(field),
                        low ? "must not be negative" : tooHigh(field))
                .seen(text(value))
                .expecting(broken.words()));
        return true;
    }

    private static FindingView warning(Posted<TestDayRow> posted, Finding finding) {
        boolean unused = finding.code() == FindingCode.OUT_OF_RANGE;
        boolean isRatio = finding.field().filter("fatProteinRatio"::equals).isPresent();
        return FindingView.warning(
                        finding.code().code(),
                        posted.pointer(isRatio ? "fatPct" : finding.field().orElse("")),
                        unused
                                ? "is kept and shown, and takes no part in figures"
                                : isRatio
                                        ? "fat over protein is unusual; both are kept and used, please check them"
                                        : "is kept and used; please check it")
                .seen(finding.seen().orElse(""))
                .expecting(finding.expected().orElse(null));
    }

    private static String tooHighCode(String field) {
        return switch (field) {
            case "milkKg" -> "milk-unit-suspect";
            case "sccThousandPerMl" -> "scc-unit-suspect";
            default -> "percent-unit-suspect";
        };
    }

    private static String tooHigh(String field) {
        return switch (field) {
            case "milkKg" -> "is too high for kg in 24 hours; was it pounds, or the milk of several days?";
            case "sccThousandPerMl" ->
                "is too high for thousand cells per mL; was it cells per mL? It is never divided here";
            default -> "is too high for percent by mass; was it g per litre?";
        };
    }

    private static String text(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
