package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.CountedService.Outcome;
import org.pailbook.lactation.breeding.Pregnancy.Known;

/** The worked herd of six cows and three cycles, 1 January to 4 March 2026; waiting period 50 days. What became of each service is given. */
final class SixCows {
    static final LocalDate LAST_DAY = LocalDate.of(2026, 3, 4);
    static final int WAITING_DAYS = 50;

    private SixCows() {}

    static List<BreedingPeriod> all() {
        return List.of(
                cow("A", "2025-11-01", "2026-01-31", null, null, "2026-01-10", "2026-01-31"),
                cow("B", "2025-11-25", "2026-02-20", null, null, "2026-02-20"),
                cow("C", "2025-10-01", "2026-01-05", null, null, "2026-01-05"),
                cow("D", "2025-11-20", null, "2026-02-20", null, "2026-02-05"),
                cow("E", "2025-09-15", null, null, "2026-01-05"),
                cow("F", "2025-11-27", "2026-01-18", null, null, "2026-01-18"));
    }

    private static BreedingPeriod cow(
            String name, String calved, String conceived, String sold, String notToBreed, String... served) {
        List<CountedService> services = new ArrayList<>();
        for (String day : served) {
            services.add(
                    CountedService.on(LocalDate.parse(day), day.equals(conceived) ? Outcome.PREGNANT : Outcome.OPEN));
        }
        Optional<LocalDate> conception = Optional.ofNullable(conceived).map(LocalDate::parse);
        List<Pregnancy> pregnancies = conception.isEmpty()
                ? List.of()
                : List.of(new Pregnancy(
                        conception,
                        Known.SERVICE,
                        "",
                        conception.map(day -> day.plusDays(35)),
                        1,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
        return new BreedingPeriod(
                name,
                2,
                Optional.of(LocalDate.parse(calved)),
                services,
                pregnancies,
                Optional.empty(),
                Optional.ofNullable(sold).map(LocalDate::parse),
                notToBreed == null
                        ? List.of()
                        : List.of(new PutAside(LocalDate.parse(notToBreed), Optional.empty(), "")));
    }
}
