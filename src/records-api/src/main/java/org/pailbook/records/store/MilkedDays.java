package org.pailbook.records.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.DaysFromMilkings;
import org.pailbook.lactation.testday.MilkedDay;
import org.pailbook.lactation.testday.Milking;
import org.pailbook.lactation.testday.MilkingShares;
import org.pailbook.lactation.testday.TestDay;

/** One cow's milkings, put together day by day. */
final class MilkedDays {
    private static final int USUAL_A_DAY = 2;
    private static final int WITH_A_THIRD = 3;

    private MilkedDays() {}

    /** Test days posted and those her milkings make. @param milkings hers; null if there are none */
    static List<TestDay> beside(List<TestDay> posted, List<MilkingRow> milkings, MilkingShares shares) {
        if (milkings == null) {
            return posted;
        }
        List<TestDay> all = new ArrayList<>(posted);
        List<MilkedDay> days = new ArrayList<>();
        milkings.stream()
                .collect(Collectors.groupingBy(milking -> milking.date, TreeMap::new, Collectors.toList()))
                .values()
                .forEach(ofDay -> {
                    if (ofDay.stream()
                                    .map(milking -> milking.milkingOfDay)
                                    .distinct()
                                    .count()
                            == ofDay.size()) {
                        days.add(day(ofDay));
                    } else {
                        all.add(notSummed(ofDay));
                    }
                });
        return DaysFromMilkings.beside(all, days, shares);
    }

    private static MilkedDay day(List<MilkingRow> ofDay) {
        List<Milking> milkings = ofDay.stream().map(MilkedDays::milking).toList();
        boolean hasThird = ofDay.stream().anyMatch(milking -> milking.milkingOfDay.equals("third"));
        int told = ofDay.stream()
                .filter(milking -> milking.milkingsPerDay != null)
                .mapToInt(milking -> milking.milkingsPerDay)
                .max()
                .orElse(hasThird ? WITH_A_THIRD : USUAL_A_DAY);
        return new MilkedDay(ofDay.get(0).date, Math.max(told, milkings.size()), milkings, OptionalInt.empty());
    }

    private static TestDay notSummed(List<MilkingRow> ofDay) {
        OptionalDouble none = OptionalDouble.empty();
        Map<String, Long> times = ofDay.stream()
                .collect(Collectors.groupingBy(milking -> milking.milkingOfDay, TreeMap::new, Collectors.counting()));
        return new TestDay(ofDay.get(0).date, none, none, none, none, none)
                .withNotes(List.of(Finding.on(ofDay.get(0).date, FindingCode.MILKINGS_NOT_SUMMED)
                        .withSeen("times " + times)
                        .withExpected("each milking of the day once")
                        .withRecord(ofDay.get(0).id)));
    }

    private static Milking milking(MilkingRow row) {
        Milking.Session session = switch (row.milkingOfDay) {
            case "am" -> Milking.Session.AM;
            case "pm" -> Milking.Session.PM;
            default -> Milking.Session.MIDDAY;
        };
        return new Milking(
                session,
                row.milkKg,
                optional(row.hoursSincePrevious),
                optional(row.fatPct),
                optional(row.proteinPct),
                optional(row.lactosePct),
                optional(row.sccThousandPerMl));
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
