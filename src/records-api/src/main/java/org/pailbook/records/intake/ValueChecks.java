package org.pailbook.records.intake;

import java.math.BigDecimal;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.FindingView;

/** Holds single values against the library's table of limits: impossible ones are refused, odd ones taken with a warning. */
public final class ValueChecks {
    private ValueChecks() {}

    /**
     * Notes a value that cannot be right as an error, an odd one as a warning.
     *
     * @param limit name in the table of limits
     * @param member of the record
     * @param value null if it was not sent
     */
    public static void check(Posted<? extends StoredRecord> posted, String limit, String member, Double value) {
        if (value == null) {
            return;
        }
        ValueLimit broken = ValueLimits.PUBLISHED.impossible(limit, value).orElse(null);
        if (broken == null) {
            warn(posted, limit, member, value, "is kept; please check it");
            return;
        }
        boolean negative = value < 0 && broken.least().orElse(-1) >= 0;
        posted.add(FindingView.error(
                        negative ? "negative-value" : "value-impossible",
                        posted.pointer(member),
                        negative ? "must not be negative" : "cannot be right; was another unit meant?")
                .seen(shown(value))
                .expecting(broken.words()));
    }

    /** Notes an odd value as a warning, with words of its own. */
    public static void warn(
            Posted<? extends StoredRecord> posted, String limit, String member, double value, String words) {
        odd(posted, limit, value)
                .ifPresent(
                        finding -> posted.add(FindingView.warning(finding.code().code(), posted.pointer(member), words)
                                .seen(shown(value))
                                .expecting(finding.expected().orElse(null))));
    }

    /** What is odd about a value, by the limits of the record's day; a herd's own are never narrower than those shipped. */
    public static Optional<Finding> odd(Posted<? extends StoredRecord> posted, String limit, double value) {
        return ValueLimits.PUBLISHED
                .check(limit, value, BreedGroup.UNKNOWN)
                .flatMap(any -> posted.limits().check(limit, value, BreedGroup.UNKNOWN));
    }

    private static String shown(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
