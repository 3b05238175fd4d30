package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/** Weighed milkings of a herd added up by day, in the database: a large herd has thousands in a day. */
@ApplicationScoped
public class MilkByDay {
    private final EntityManager entities;

    @Inject
    MilkByDay(EntityManager entities) {
        this.entities = entities;
    }

    /** @param cows with a weighed milking on that day */
    public record Day(LocalDate date, double milkKg, long cows) {}

    /** Both days included; days without a milking are left out; latest first. */
    public List<Day> of(HerdRow herd, LocalDate from, LocalDate to) {
        return entities
                .createQuery(
                        "select date, sum(milkKg), count(distinct animalId) from MilkingRow where herdId = :herd and changeSeq + 0 <= :last"
                                + " and withdrawn = false and milkKg is not null and date >= :from and date <= :to"
                                + " group by date order by date desc",
                        Object[].class)
                .setParameter("herd", herd.id)
                .setParameter("last", herd.changeSeq)
                .setParameter("from", from)
                .setParameter("to", to)
                .getResultList()
                .stream()
                .map(day -> new Day((LocalDate) day[0], (Double) day[1], (Long) day[2]))
                .toList();
    }

    /** Mean weight of the last day with a test day on record, kg; empty without one. */
    public OptionalDouble meanOfLastTestKg(HerdRow herd) {
        List<Object[]> last = entities.createQuery(
                        "select date, avg(milkKg) from TestDayRow where herdId = :herd and changeSeq + 0 <= :last"
                                + " and withdrawn = false and milkKg is not null group by date order by date desc",
                        Object[].class)
                .setParameter("herd", herd.id)
                .setParameter("last", herd.changeSeq)
                .setMaxResults(1)
                .getResultList();
        return last.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of((Double) last.get(0)[1]);
    }
}
