package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * Days from calving to the conception of the confirmed pregnancy. For a cow not known to be pregnant it counts to the as-of date and the
 * figure says "so far": a mean over pregnant cows alone is too low.
 */
public final class DaysOpen implements PublishedMethod {
    public static final DaysOpen TO_CONCEPTION = new DaysOpen();

    private DaysOpen() {}

    /**
     * @param conceptionDate of the pregnancy that was confirmed; one after the as-of date is as if not known
     */
    public Figure of(LocalDate calvingDate, Optional<LocalDate> conceptionDate, LocalDate asOf) {
        Optional<LocalDate> known = conceptionDate.filter(date -> !date.isAfter(asOf));
        LocalDate to = known.orElse(asOf);
        int days = DaysInMilk.on(calvingDate, to);
        Figure.Builder figure = Figure.of(this, "d", asOf).noInterval("a count of days");
        if (days < 0) {
            return figure.finding(Finding.on(to, FindingCode.DATES_OUT_OF_ORDER)
                            .withSeen(known.isPresent() ? "conception " + to : "as of " + to)
                            .withExpected("not before the calving, " + calvingDate))
                    .build();
        }
        if (known.isEmpty()) {
            figure.finding(Finding.of(FindingCode.OPEN_SO_FAR));
        }
        return figure.value(days)
                .explanation(new Explanation(List.of(new Explanation.Part(calvingDate + " to " + to, days))))
                .build();
    }

    @Override
    public String id() {
        return "days-open";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Common practice", 2026, "calving to conception of the confirmed pregnancy", HowKnown.COMMON_PRACTICE);
    }
}
