package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.OpenMilkings;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.Milking.Session;

/** Morning and evening of 111 real cows; expected figures worked out in Python on the same data, apart from this library. */
class MilkingSharesOpenDataTest {
    private static final LocalDate CALVING = LocalDate.of(2001, 1, 1);

    /** Days with both milkings weighed, by cow. */
    private static Map<Integer, List<MilkedDay>> pairedDays() {
        Map<String, List<OpenMilkings>> byDay = new LinkedHashMap<>();
        for (OpenMilkings milking : OpenMilkings.read(SharedData.orSkip())) {
            if (milking.milkKg().isPresent()) {
                byDay.computeIfAbsent(
                                milking.animal() + "/" + milking.parity() + "/" + milking.daysInMilk(),
                                unused -> new ArrayList<>())
                        .add(milking);
            }
        }
        Map<Integer, List<MilkedDay>> byCow = new LinkedHashMap<>();
        byDay.values().stream().filter(day -> day.size() == 2).forEach(day -> {
            List<Milking> milkings = day.stream()
                    .map(one -> Milking.of(
                            Session.valueOf(one.session()), one.milkKg().orElseThrow()))
                    .toList();
            int daysInMilk = day.get(0).daysInMilk();
            byCow.computeIfAbsent(Integer.valueOf(day.get(0).animal()), unused -> new ArrayList<>())
                    .add(new MilkedDay(CALVING.plusDays(daysInMilk), 2, milkings, OptionalInt.of(daysInMilk)));
        });
        return byCow;
    }

    private static double ratio(DailyYieldMethod method, List<MilkedDay> days, Session session) {
        double estimatedKg = 0;
        double trueKg = 0;
        for (MilkedDay day : days) {
            Milking one = day.milking(session).orElseThrow();
            MilkedDay part = new MilkedDay(day.date(), 2, List.of(one), day.daysInMilk());
            estimatedKg += method.of(part).milk().orThrow();
            trueKg += SumOfMilkings.ICAR.of(day).milk().orThrow();
        }
        return estimatedKg / trueKg;
    }

    @Test
    void theShareOfHalfTheCowsBringsTheOtherHalfWithinOnePercentAndDoublingIsOffBy22() {
        Map<Integer, List<MilkedDay>> byCow = pairedDays();
        List<MilkedDay> learning = new ArrayList<>();
        List<MilkedDay> checking = new ArrayList<>();
        boolean even = true;
        for (Integer cow : new TreeSet<>(byCow.keySet())) {
            (even ? learning : checking).addAll(byCow.get(cow));
            even = !even;
        }
        assertThat(learning).hasSize(20_445);
        assertThat(checking).hasSize(18_282);
        MilkingShares learned = MilkingShares.learn(learning, 0.5);
        assertThat(learned.amShare()).isCloseTo(0.6066369, within(5e-8));
        assertThat(ratio(learned, checking, Session.AM)).isCloseTo(1.00531, within(5e-6));
        assertThat(ratio(learned, checking, Session.PM)).isCloseTo(0.99181, within(5e-6));
        MilkingShares doubling = MilkingShares.learn(List.of(), 0.5);
        assertThat(ratio(doubling, checking, Session.AM)).isCloseTo(1.21972, within(5e-6));
        assertThat(ratio(doubling, checking, Session.PM)).isCloseTo(0.78028, within(5e-6));
    }
}
