package org.pailbook.records.intake;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InParts;

/**
 * What is known of the animals of a chunk of rows while it is being checked: birth, calvings, departures. Rows accepted earlier in
 * the chunk are noted here, so that later ones are checked against them too.
 */
public final class Surroundings {
    /** Never written to: days are noted in a map of the animal's own. */
    private static final TreeMap<LocalDate, String> NO_DAYS = new TreeMap<>();

    private final LocalDate today;
    private final Map<String, LocalDate> births = new HashMap<>();
    /** Animals recorded as male. */
    private final Set<String> males = new HashSet<>();

    /** By animal: day of calving to its id, null for a row not stored yet. */
    private final Map<String, TreeMap<LocalDate, String>> calvings = new HashMap<>();

    private final Map<String, TreeMap<LocalDate, String>> departures = new HashMap<>();

    /** By animal: day she left to the day she came back. */
    private final Map<String, Map<LocalDate, LocalDate>> returns = new HashMap<>();

    private final Map<Class<? extends AnimalEvent>, Map<String, TreeMap<LocalDate, String>>> others = new HashMap<>();

    Surroundings(LocalDate today) {
        this.today = today;
    }

    /** Reads what is known of these animals besides those read before. */
    void load(
            StatelessSession session,
            HerdRow herd,
            Collection<String> animalIds,
            Set<Class<? extends AnimalEvent>> looksAt) {
        InParts.of(animalIds, some -> {
            session.createSelectionQuery(
                            "select id, birthDate, sex from AnimalRow where herdId = :herd and id in :ids"
                                    + " and (birthDate is not null or sex = 'male')",
                            Object[].class)
                    .setParameter("herd", herd.id)
                    .setParameter("ids", InParts.oneOrAll(some))
                    .getResultList()
                    .forEach(row -> noteAnimal((String) row[0], (LocalDate) row[1], "male".equals(row[2])));
            loadDays(session, herd, some, "CalvingRow", calvings);
            loadDays(session, herd, some, "DepartureRow", departures);
            loadReturns(session, herd, some);
            looksAt.forEach(kind -> loadDays(
                    session, herd, some, kind.getSimpleName(), others.computeIfAbsent(kind, any -> new HashMap<>())));
        });
    }

    private void noteAnimal(String id, LocalDate born, boolean isMale) {
        if (born != null) {
            births.put(id, born);
        }
        if (isMale) {
            males.add(id);
        }
    }

    private void loadReturns(StatelessSession session, HerdRow herd, Collection<String> animalIds) {
        session.createSelectionQuery(
                        "select animalId, date, returnedOn from DepartureRow where herdId = :herd and animalId in :ids"
                                + " and withdrawn = false and returnedOn is not null",
                        Object[].class)
                .setParameter("herd", herd.id)
                .setParameter("ids", InParts.oneOrAll(animalIds))
                .getResultList()
                .forEach(row -> noteReturn((String) row[0], (LocalDate) row[1], (LocalDate) row[2]));
    }

    private void loadDays(
            StatelessSession session,
            HerdRow herd,
            Collection<String> animalIds,
            String entity,
            Map<String, TreeMap<LocalDate, String>> into) {
        List<Object[]> rows = session.createSelectionQuery(
                        "select animalId, date, id from " + entity
                                + " where herdId = :herd and animalId in :ids and withdrawn = false",
                        Object[].class)
                .setParameter("herd", herd.id)
                .setParameter("ids", InParts.oneOrAll(animalIds))
                .getResultList();
        for (Object[] row : rows) {
            note(into, (String) row[0], (LocalDate) row[1], (String) row[2]);
        }
    }

    /** Today in the herd's zone. */
    public LocalDate today() {
        return today;
    }

    /** Day of birth; null if not recorded. */
    public LocalDate birthDate(String animalId) {
        return births.get(animalId);
    }

    /** Whether it is recorded as male. */
    boolean isMale(String animalId) {
        return males.contains(animalId);
    }

    /** The last calving on or before that day. */
    public Optional<LocalDate> calvingOnOrBefore(String animalId, LocalDate day) {
        return Optional.ofNullable(days(calvings, animalId).floorKey(day));
    }

    /** The same, other than the record that is being replaced. */
    public Optional<LocalDate> calvingOnOrBefore(String animalId, LocalDate day, String replacedId) {
        return days(calvings, animalId).headMap(day, true).descendingMap().entrySet().stream()
                .filter(calving -> replacedId == null || !replacedId.equals(calving.getValue()))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    /** The first calving after that day. */
    public Optional<LocalDate> calvingAfter(String animalId, LocalDate day) {
        return Optional.ofNullable(days(calvings, animalId).higherKey(day));
    }

    /** The calving nearest to that day on either side, other than the record that is being replaced. */
    public Optional<LocalDate> nearestCalving(String animalId, LocalDate day, String replacedId) {
        return days(calvings, animalId).entrySet().stream()
                .filter(calving -> replacedId == null || !replacedId.equals(calving.getValue()))
                .map(Map.Entry::getKey)
                .filter(calved -> !calved.equals(day))
                .min((a, b) -> Long.compare(distance(a, day), distance(b, day)));
    }

    /** The last record of a kind the check looks at, on or before that day. */
    public Optional<LocalDate> lastOnOrBefore(Class<? extends AnimalEvent> kind, String animalId, LocalDate day) {
        return Optional.ofNullable(
                days(others.getOrDefault(kind, Map.of()), animalId).floorKey(day));
    }

    /** The days of a kind the check looks at, before that day, in order. */
    public List<LocalDate> daysBefore(Class<? extends AnimalEvent> kind, String animalId, LocalDate day) {
        return List.copyOf(
                days(others.getOrDefault(kind, Map.of()), animalId).headMap(day).keySet());
    }

    /** A departure before that day, neither with a return up to that day nor with a calving after it, which would show that she came back. */
    public Optional<LocalDate> departureBefore(String animalId, LocalDate day) {
        LocalDate left = days(departures, animalId).lowerKey(day);
        if (left == null) {
            return Optional.empty();
        }
        LocalDate back = returns.getOrDefault(animalId, Map.of()).get(left);
        if (back != null && !back.isAfter(day)) {
            return Optional.empty();
        }
        LocalDate calved = days(calvings, animalId).floorKey(day);
        return calved != null && calved.isAfter(left) ? Optional.empty() : Optional.of(left);
    }

    public void noteCalving(String animalId, LocalDate day, String replacedId) {
        forget(calvings, animalId, replacedId);
        note(calvings, animalId, day, replacedId);
    }

    /** @param returned day on which she came back; null if she did not */
    public void noteReturn(String animalId, LocalDate left, LocalDate returned) {
        returns.computeIfAbsent(animalId, any -> new HashMap<>()).put(left, returned);
    }

    public void noteDeparture(String animalId, LocalDate day, String replacedId) {
        forget(departures, animalId, replacedId);
        note(departures, animalId, day, replacedId);
    }

    private static long distance(LocalDate a, LocalDate b) {
        return Math.abs(a.toEpochDay() - b.toEpochDay());
    }

    private static TreeMap<LocalDate, String> days(Map<String, TreeMap<LocalDate, String>> from, String animalId) {
        return from.getOrDefault(animalId, NO_DAYS);
    }

    private static void note(Map<String, TreeMap<LocalDate, String>> into, String animalId, LocalDate day, String id) {
        into.computeIfAbsent(animalId, any -> new TreeMap<>()).put(day, id);
    }

    private static void forget(Map<String, TreeMap<LocalDate, String>> from, String animalId, String id) {
        if (id != null) {
            days(from, animalId).values().removeIf(id::equals);
        }
    }
}
