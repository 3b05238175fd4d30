package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.lactation.event.PregnancyCheck.Result;

/** Months of calving and drying off of Holsteins: 279 days for cows and 278 for heifers (Norman et al. 2009, abstract read), 60 days dry. */
class DueByMonthPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 10);

    private static BreedingHistory pregnant(String served) {
        LocalDate day = LocalDate.parse(served);
        return BreedingHistory.NONE
                .withBreed("HOL")
                .withInseminations(List.of(Insemination.on(day)))
                .withChecks(List.of(PregnancyCheck.of(day.plusDays(40), Result.PREGNANT)));
    }

    private static BreedingHistory cow(String served) {
        return pregnant(served)
                .withCalvings(List.of(Calving.on(LocalDate.parse(served).minusDays(90))));
    }

    @Test
    void everyPregnantAnimalIsInTheMonthSheIsDue() {
        List<BreedingRecord> herd = List.of(
                // check V18: served 2026-03-15 due 2026-12-19, dry 2026-10-20; a heifer 2026-12-18
                BreedingRecord.of("cow", cow("2026-03-15"), DAY),
                BreedingRecord.of("heifer", pregnant("2026-03-15"), DAY),
                // served 2025-09-01: due 2026-06-07, past; dried off in time
                BreedingRecord.of(
                        "late", cow("2025-09-01").withDryOffs(List.of(new DryOff(LocalDate.of(2026, 4, 8)))), DAY),
                // served 2025-10-20: due 2026-07-26, to dry off 2026-05-27, past and still in milk
                BreedingRecord.of("in milk", cow("2025-10-20"), DAY),
                BreedingRecord.of(
                        "not checked",
                        BreedingHistory.NONE.withInseminations(List.of(Insemination.on(DAY.minusDays(30)))),
                        DAY));
        List<DueByMonth> months = DueByMonth.of(herd, BreedingSettings.USUAL, DAY);
        assertThat(months).hasSize(10);
        assertThat(months.get(0)).isEqualTo(new DueByMonth(YearMonth.of(2026, 6), 1, 0, 1));
        assertThat(months.get(1)).isEqualTo(new DueByMonth(YearMonth.of(2026, 7), 1, 0, 0));
        assertThat(months.get(4)).isEqualTo(new DueByMonth(YearMonth.of(2026, 10), 0, 0, 1));
        assertThat(months.get(6)).isEqualTo(new DueByMonth(YearMonth.of(2026, 12), 1, 1, 0));
        assertThat(months.stream()
                        .mapToInt(one -> one.cows() + one.heifers() + one.toDryOff())
                        .sum())
                .isEqualTo(6);
    }
}
